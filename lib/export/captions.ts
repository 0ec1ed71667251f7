import type { DayState } from '../log/day-state'
import type { Shoot } from '../plan/shoot'
import { formatDuration, formatTemp, type Instant, instant, type Seconds, seconds, type UnitSystem } from '../units'
import { editClock } from './edit-clock'
import { cookShown, type FilmFacts, filmFacts, probeReads, stateWord } from './film-facts'
import type { Cue } from './webvtt'

/** What the log knows while the camera rolls, as captions; they change by the minute. Nothing before the meat went on. */
export function captionsOf(shoot: Shoot, day: DayState, units: UnitSystem): readonly Cue[] {
  const clock = editClock(shoot, day)
  if (!clock) return []
  const facts = new Map(shoot.cooks.map(({ id }) => [id, filmFacts(shoot, day, id)]))
  return clock.shown.flatMap(({ from, to, startS }) => {
    const cook = facts.get(cookShown(shoot, day, from) ?? '')
    return cook ? joined(minuteByMinute(cook, from, to, startS, units)) : []
  })
}

function minuteByMinute(facts: FilmFacts, from: Instant, to: Instant, startS: Seconds, units: UnitSystem): Cue[] {
  const cues: Cue[] = []
  const { meatOn } = facts
  const inVideo = (at: Instant) => seconds(startS + (at - from) / 1000)
  for (let at = Math.max(from, meatOn); at < to; ) {
    const minute = Math.floor((at - meatOn) / 60_000)
    const next = Math.min(to, meatOn + 60_000 * (minute + 1))
    cues.push({ startS: inVideo(instant(at)), endS: inVideo(instant(next)), text: factWords(facts, minute, units) })
    at = next
  }
  return cues
}

/** "Probe 46 °C, 2 h 31 min after the meat went on. Resting." */
export function factWords(facts: FilmFacts, minute: number, units: UnitSystem): string {
  const t = seconds(60 * minute)
  const probeC = probeReads(facts, t)
  const read = probeC === null ? '' : `Probe ${formatTemp(probeC, units)}, `
  const state = stateWord(facts, t) ?? ''
  const since =
    minute === 0
      ? `the meat has just ${facts.went.replace('went', 'gone')}`
      : `${formatDuration(t)} after the meat ${facts.went}`
  return `${capital(`${read}${since}`)}. ${capital(state)}.`
}
const capital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1)

/** Cues of one text that follow on each other are one. */
function joined(cues: readonly Cue[]): Cue[] {
  const all: Cue[] = []
  for (const cue of cues) {
    const last = all.at(-1)
    if (last?.text === cue.text && last.endS === cue.startS) all[all.length - 1] = { ...last, endS: cue.endS }
    else all.push(cue)
  }
  return all
}
