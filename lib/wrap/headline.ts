import { formatClock } from '../plan/clock'
import { type Instant, type Seconds, seconds } from '../units'
import type { MomentRow } from './moments'
import { capital, minutesWord, numberWord } from './words'

/** What a cook is judged by: the last of these that was told of. */
const ENDS = ['first-slice', 'off-heat', 'pull'] as const

function endRow(rows: readonly MomentRow[], cook: string): MomentRow | undefined {
  const own = rows.filter((row) => row.cook === cook && row.happened !== null)
  return ENDS.map((end) => own.find(({ moment }) => moment === end)).find((row) => row !== undefined) ?? own.at(-1)
}

/** "Thirteen minutes later than planned. Within four minutes of what the board said at 18:58." */
export function headlines(
  rows: readonly MomentRow[],
  cook: string,
  board: { readonly at: Instant } | null,
  zone: string,
): readonly string[] {
  const end = endRow(rows, cook)
  if (end?.offMorning == null) return []
  const first = `${offWords(end.offMorning)}.`
  const against = rows.filter((row) => row.cook === cook).flatMap(({ offBoard }) => offBoard ?? [])
  if (!board || against.length === 0) return [first]
  const worst = Math.max(...against.map((off) => Math.ceil(Math.abs(off) / 60)))
  const within =
    worst <= 1 ? 'a minute' : worst < 60 ? `${numberWord(worst)} minutes` : minutesWord(seconds(worst * 60))
  return [first, `Within ${within} of what the board said at ${formatClock(board.at, zone)}.`]
}
function offWords(off: Seconds): string {
  if (Math.round(Math.abs(off) / 60) === 0) return 'To the minute as planned'
  return `${capital(minutesWord(off))} ${off > 0 ? 'later' : 'earlier'} than planned`
}

/** "All but the fire lit fell inside the window. Ten moments of eleven are on camera." */
export function windowSentence(rows: readonly MomentRow[]): string {
  const told = rows.filter(({ fell }) => fell !== null)
  if (told.length === 0) return 'No moment with a window was marked.'
  const outside = told.filter(({ fell }) => fell !== 'inside').map(({ name }) => name)
  const fell =
    outside.length === 0
      ? 'Every moment fell inside its window'
      : outside.length === told.length
        ? 'No moment fell inside its window'
        : outside.length <= 3
          ? `All but ${outside.join(', ')} fell inside the window`
          : `${capital(numberWord(told.length - outside.length))} moments of ${numberWord(told.length)} fell inside the window`
  const caught = rows.filter(({ onCamera }) => onCamera).length
  return `${fell}. ${caught === 0 ? 'None' : capital(numberWord(caught))} of ${numberWord(rows.length)} moments ${caught <= 1 ? 'is' : 'are'} on camera.`
}
