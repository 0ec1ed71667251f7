import type { DayState, Take } from '../log/day-state'
import type { Line } from '../log/log'
import { uncapital } from './words'

/** By shot, why it was missed, where somebody said so. */
export function whyMissed(lines: readonly Line[]): ReadonlyMap<string, string> {
  const said = new Map<string, string>()
  for (const { entry } of lines)
    if (entry.kind === 'shot-state' && entry.state === 'missed' && entry.why) said.set(entry.shot, entry.why)
  return said
}

/** What there is of some shots: "2 takes, good", "3 takes, 1 good", "1 take, soft", "missed: the probe was out". */
export function takesWords(shots: readonly string[], day: DayState, why: ReadonlyMap<string, string>): string {
  const takes = takesOf(shots, day.takes)
  if (takes.length === 0) {
    const missed = shots.find((shot) => day.shots[shot]?.state === 'missed')
    if (missed === undefined) return shots.some((shot) => day.shots[shot]?.state === 'dropped') ? 'dropped' : ''
    const reason = why.get(missed)
    return reason ? `missed: ${lowered(reason)}` : 'missed'
  }
  const count = `${takes.length} ${takes.length === 1 ? 'take' : 'takes'}`
  const good = takes.filter(({ verdict }) => verdict === 'good').length
  if (good === takes.length) return `${count}, good`
  if (good > 0) return `${count}, ${good} good`
  return `${count}, ${lowered(takes.at(-1)?.notes.at(-1) ?? SAID[takes.at(-1)?.verdict ?? 'none'])}`
}
const SAID = { 'no-good': 'no good', hold: 'held', none: 'no verdict', good: 'good' } as const

/** The best of the cameras stands for a take. */
function takesOf(shots: readonly string[], all: readonly Take[]): Take[] {
  const best = new Map<string, Take>()
  for (const take of all) {
    if (take.shot === null || !shots.includes(take.shot)) continue
    const key = JSON.stringify([take.shot, take.take])
    if (best.get(key)?.verdict !== 'good') best.set(key, take)
  }
  return [...best.values()]
}
const lowered = (words: string) => uncapital(words).replace(/\.$/, '')
