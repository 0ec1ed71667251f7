import { formatDuration, type Seconds, seconds } from '../units'

const SMALL =
  'no one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty'.split(
    ' ',
  )

/** "four", "23". */
export const numberWord = (n: number) => SMALL[n] ?? String(n)
/** "four minutes", "a minute", "2 h 05 min". */
export function minutesWord(time: Seconds): string {
  const min = Math.round(Math.abs(time) / 60)
  if (min === 1) return 'one minute'
  return min < 60 ? `${numberWord(min)} minutes` : formatDuration(seconds(Math.abs(time)))
}
/** "5½", as a crew says it. */
export function halfMinutes(time: Seconds): string {
  const halves = Math.round(time / 30)
  const whole = Math.floor(halves / 2)
  if (halves % 2 === 0) return String(whole)
  return whole === 0 ? '½' : `${whole}½`
}
/** "3 min late", "3 min early", "on time". */
export function offBy(time: Seconds): string {
  const min = Math.round(Math.abs(time) / 60)
  if (min === 0) return 'on time'
  return `${formatDuration(seconds(60 * min))} ${time > 0 ? 'late' : 'early'}`
}
export const uncapital = (words: string) => words.charAt(0).toLowerCase() + words.slice(1)
export const capital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1)
