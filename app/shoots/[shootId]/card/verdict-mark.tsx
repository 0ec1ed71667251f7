import type { FindingKind } from '@/lib/card/claim'
import { Icon, type IconName } from '../../../ui/signs'

export const VERDICTS: Record<FindingKind, string> = {
  'borne-out': 'borne out',
  'borne-out-with-care': 'borne out with care',
  contradicted: 'contradicted',
  'cannot-be-checked': 'cannot be checked',
}
const ICONS: Record<FindingKind, IconName> = {
  'borne-out': 'tick',
  'borne-out-with-care': 'tick-with-care',
  contradicted: 'crossed',
  'cannot-be-checked': 'unchecked',
}

/** The word stands beside it, so the mark itself is silent. */
export const VerdictMark = ({ finding }: { finding: FindingKind }) => <Icon name={ICONS[finding]} />
