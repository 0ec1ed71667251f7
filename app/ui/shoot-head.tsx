import Link from 'next/link'
import { asRead } from '@/lib/plan/as-read'
import { toInstant } from '@/lib/plan/clock'
import type { UnitSystem } from '@/lib/units'
import { readersWay } from '../locale'
import {
  allShoots,
  calls,
  card,
  day,
  exportWords,
  plan,
  rehearseDay,
  set,
  shoots,
  shootWords,
  wrap,
} from '../words/shared'
import { factsOf, type OpenShoot } from '../workbench'
import { ArchiveLink } from './archive-link'
import { CrewLink } from './crew-link'
import { HelpLink, type HelpPage } from './help-link'
import { TimesIn } from './times-in'
import { UndoButton } from './undo-button'
import { UnitsButton } from './units-button'

const PAGES = [
  ['plan', plan],
  ['day', day],
  ['calls', calls],
  ['set', set],
  ['card', card],
  ['wrap', wrap],
] as const
export type ShootPage = (typeof PAGES)[number][0]

interface ShootHeadProps {
  readonly open: OpenShoot
  readonly units: UnitSystem
  readonly page: ShootPage
  /** Which guide fits, where it is not the page's own. */
  readonly help?: HelpPage
}
/** Head of every page of a shoot: name and pages on the line, under it the facts and what is rarely wanted. */
export async function ShootHead({ open, units, page, help = page }: ShootHeadProps) {
  const { id, shoot, canUndo } = open
  return (
    <>
      <header className="head">
        <Link href="/" className="small" aria-label={allShoots}>
          {shoots}
        </Link>
        <span className="name">{shoot.title}</span>
        <nav aria-label={shootWords}>
          {PAGES.map(([one, name]) => (
            <Link key={one} href={`/shoots/${id}/${one}`} aria-current={one === page ? 'page' : undefined}>
              {name}
            </Link>
          ))}
        </nav>
      </header>
      <div className="under-head">
        <p className="small">
          {asRead(factsOf(shoot, units), await readersWay())}
          <TimesIn zone={shoot.zone} at={toInstant(shoot, '12:00')} />
        </p>
        <div className="tools no-print">
          <UndoButton id={id} canUndo={canUndo} />
          <Link className="textlink" href={`/shoots/${id}/set/rehearsal`} prefetch={false}>
            {rehearseDay}
          </Link>
          <CrewLink id={id} />
          <UnitsButton units={units} />
          <a className="textlink" href={`/api/shoots/${id}/export`} download>
            {exportWords}
          </a>
          <ArchiveLink id={id} />
          <HelpLink page={help} />
        </div>
      </div>
    </>
  )
}
