import { formatDuration, seconds } from '../units'
import type { CorrectionTold } from './corrections'
import type { Mark } from './day-state'
import { type Skew, skewWords } from './skew'

interface Decided {
  readonly marks: Readonly<Record<string, Mark>>
  readonly skews: Readonly<Record<string, Skew>>
  readonly corrections: readonly CorrectionTold[]
}

/** What the merge of several phones decided, a sentence each, for those who were there. */
export function tellings({ marks, skews, corrections }: Decided): string[] {
  return [
    ...Object.values(marks).flatMap(markWords),
    ...Object.values(skews).flatMap((skew) => skewWords(skew) ?? []),
    ...corrections.flatMap(correctionWords),
  ]
}

/** "2 phones marked 'off heat', 40 s apart; the earlier counts." */
function markWords({ moment, at, device, others }: Mark): string[] {
  const last = others.at(-1)
  if (!last) return []
  const name = `'${moment.replaceAll('-', ' ')}'`
  const apart = `${formatDuration(seconds((last.at - at) / 1000))} apart`
  const phones = new Set([device, ...others.map((other) => other.device)]).size
  const who = phones > 1 ? `${phones} phones marked ${name}` : `${name} was marked ${others.length + 1} times`
  return [`${who}, ${apart}; the ${others.length > 1 ? 'earliest' : 'earlier'} counts.`]
}

function correctionWords({ outcome, corrects, sentence }: CorrectionTold): string[] {
  if (outcome === 'waiting') return [`A correction waits for the entry ${corrects}, which is still on its way.`]
  return outcome === 'unreadable' ? [`A correction of ${corrects} was passed over: ${sentence}`] : []
}
