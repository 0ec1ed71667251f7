import { describe, expect, it } from 'vitest'
import { layOutDay } from '../../../lib/day/lay-out'
import type { Entry, EntryOf } from '../../../lib/log/entry'
import { foldLog } from '../../../lib/log/fold'
import { EMPTY_LOG, type Line, merge } from '../../../lib/log/log'
import { readEntry } from '../../../lib/log/read-entry'
import { forecastCook } from '../../../lib/model/forecast-cook'
import { quantileOf, sortedCopy } from '../../../lib/model/quantiles'
import { fromIso } from '../../../lib/plan/clock'
import { toCookPlan } from '../../../lib/plan/cook-plan'
import { momentsOf } from '../../../lib/plan/moments'
import type { Cook } from '../../../lib/plan/shoot'
import { liveForecast } from '../../../lib/session/live-forecast'
import { crewAnswers } from '../../../lib/session/made-up-crew'
import { forecastTimes, lineOf, playedOut } from '../../../lib/session/played-out'
import { MADE_UP_NOTE, madeUpDay } from '../../../lib/session/rehearsal'
import { sessionDay } from '../../../lib/session/session-day'
import { instant, minutes, seconds } from '../../../lib/units'
import { at } from '../log/lines'
import { lamb, read } from '../plan/shoots'
import type { Sound } from './made-up-day'

const shoot = read(lamb())
const hero = shoot.cooks[0] as Cook
const forecasts = new Map(
  shoot.cooks.map((cook) => [
    cook.id,
    forecastCook(toCookPlan(shoot, cook), { seed: shoot.seed ?? 1, members: 64, kernel: 'simd' }),
  ]),
)
const layout = layOutDay(shoot, forecasts, { seed: 1, sweeps: 40 })
const dayOf = (seed: number) => madeUpDay({ shoot, layout, forecasts, seed, kernel: 'simd' })
const day = dayOf(1)
const lines = day.map((document): Line => {
  const entry = readEntry(document)
  if (!entry.ok) throw new Error(JSON.stringify([document, entry.problems]))
  return { entry: entry.value, document }
})
const of = <K extends Entry['kind']>(kind: K) =>
  lines.map(({ entry }) => entry).filter((entry): entry is EntryOf<K> => entry.kind === kind)
const told = foldLog(merge(EMPTY_LOG, lines))
const plannedOff = () =>
  fromIso(layout.meatOn.hero ?? layout.start) +
  1000 * quantileOf(sortedCopy(forecasts.get('hero')?.moments['off-heat'] as Float64Array), 0.5)

describe('the timeline of a rehearsal', () => {
  it('is made of entries that the log takes, each once, in order of time, and says first that it is made up', () => {
    expect(new Set(lines.map(({ entry }) => entry.id)).size).toBe(lines.length)
    const times = lines.map(({ entry }) => entry.at)
    expect(times).toEqual([...times].sort((a, b) => a - b))
    expect(lines[0]?.entry).toMatchObject({ kind: 'note', text: MADE_UP_NOTE })
    expect(new Set(lines.map(({ entry }) => entry.by.device))).toEqual(new Set(['made-up']))
  })
  it('marks every moment of the cook that somebody can see, in the order of the chain', () => {
    const chain = momentsOf(hero).filter((moment) => moment !== 'carryover-peak')
    expect(of('mark').map(({ moment }) => moment)).toEqual(chain)
  })
  it('drifts from the plan: late by some minutes, with the cooker under its dial', () => {
    const lateMin = ((told.marks['hero/off-heat']?.at ?? 0) - plannedOff()) / 60_000
    expect(lateMin).toBeGreaterThan(3)
    expect(lateMin).toBeLessThan(30)
    const now = instant((told.marks['hero/pull']?.at ?? 0) - 20 * 60_000)
    const before = foldLog(
      merge(
        EMPTY_LOG,
        lines.filter(({ entry }) => entry.at <= now),
      ),
    )
    const { forecast } = liveForecast({ shoot, layout, told: before, now, before: null, kernel: 'simd' })
    expect(forecast.reason).toMatch(/^The cooker runs \d+ °C under its dial: off the heat about \d+ min later/)
  })
  it('has a take over the moment of each shot that is called', () => {
    const called = layout.calls.filter(({ moment }) => moment !== null && moment !== 'carryover-peak')
    expect(called.length).toBeGreaterThan(0)
    for (const { for: shot, moment, cook } of called) {
      const at = told.marks[`${cook}/${moment}`]?.at ?? Number.NaN
      const covers = told.takes.some((take) => take.shot === shot && (take.from ?? at) < at && at < (take.to ?? 0))
      expect([shot, covers]).toEqual([shot, true])
    }
    expect(told.takes.every(({ rolling }) => !rolling)).toBe(true)
  })
  it('reads the core only while the probe is in, and the cooker from meat-on', () => {
    const core = of('reading').filter(({ sensor }) => sensor === 'core')
    expect(core.length).toBeGreaterThan(10)
    expect(core[0]?.at).toBeGreaterThan(told.marks['hero/probe-in']?.at ?? Infinity)
    const [pull, off] = [told.marks['hero/pull']?.at ?? 0, told.marks['hero/off-heat']?.at ?? 0]
    expect(core.filter((one) => one.at > pull + 30_000 && one.at < off)).toEqual([])
    expect(core.some((one) => one.at > off + 5 * 60_000)).toBe(true)
  })
  it('says which shot was missed, and has a soft take before a good one', () => {
    const missed = of('shot-state').filter(({ state }) => state === 'missed')
    expect(missed).toHaveLength(1)
    expect(told.takes.some(({ shot }) => shot === missed[0]?.shot)).toBe(false)
    expect(told.takes.filter(({ verdict }) => verdict === 'no-good').length).toBeGreaterThan(0)
    expect(Object.keys(told.cameraClocks)).toEqual((shoot.cameras ?? []).map(({ id }) => id))
  })
  it('is the same by the same seed, and another by another', () => {
    expect(dayOf(1)).toEqual(day)
    expect(dayOf(4)).not.toEqual(day)
  })
})

describe('a made-up day played to its end', () => {
  const make = () => ({ reason: 'As planned.', expected: expectedAsMarked })
  const expectedAsMarked = of('mark').map(({ cook, moment, at }) => ({ cook, moment, likely: at, sd: seconds(120) }))
  const play = () =>
    playedOut({
      day: sessionDay(shoot, layout),
      lines: day.map(lineOf),
      forecasts: { at: forecastTimes(lines, 60), make },
      crewSeed: 1,
    })
  const played = play()
  it('calls everybody for the shots that are called, and has their answers', () => {
    expect(played.session.day.calls.length).toBeGreaterThan(0)
    for (const { id, people } of played.session.day.calls) {
      expect([id, played.session.calls[id]?.state]).toEqual([id, 'caught'])
      const said = new Set(played.session.told.answers[id]?.map(({ person }) => person))
      expect([id, people.every((person) => said.has(person))]).toEqual([id, true])
    }
  })
  it('ends with every alert done, and comes out the same twice', () => {
    const states = Object.values(played.session.alerts).map(({ state }) => state)
    expect(states.length).toBeGreaterThan(0)
    expect(new Set(states)).toEqual(new Set(['done']))
    expect(play().lines).toEqual(played.lines)
  })
})

describe('the crew of a rehearsal', () => {
  const alert: Sound = {
    do: 'sound-alert',
    key: 'standby/call-turn',
    event: 'e',
    tone: 'standby',
    owner: 'cam-1',
    to: ['cam-1', 'presenter'],
    channels: ['screen'],
    action: 'Stand by.',
    deadline: at(20),
    call: 'call-turn',
  }
  it('comes within a minute and is ready by the deadline; whoever holds the screen answers for themselves', () => {
    const said = crewAnswers(alert, at(0), 1, 'presenter')
    expect(said.map(({ person, answer }) => `${person} ${answer}`)).toEqual(['cam-1 coming', 'cam-1 ready'])
    expect(said[0]?.at).toBeLessThanOrEqual(at(1))
    expect(said[1]?.at).toBeLessThanOrEqual(at(20))
    expect(crewAnswers(alert, at(0), 1, null)).toHaveLength(4)
  })
  it('answers trouble by its owner alone, and rolls without a word', () => {
    const trouble = crewAnswers({ ...alert, tone: 'trouble', call: 'turn/hero' }, at(0), 1, null)
    expect(trouble.map(({ person }) => person)).toEqual(['cam-1'])
    expect((trouble[0]?.at ?? 0) - at(0)).toBeLessThan(minutes(1) * 1000)
    expect(crewAnswers({ ...alert, tone: 'roll' }, at(0), 1, null)).toEqual([])
  })
})
