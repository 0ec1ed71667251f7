import { describe, expect, it } from 'vitest'
import { checkLayout, RULES, type Rule } from '../../../lib/day/check'
import { seconds } from '../../../lib/units'
import { at, type CleanDay, cleanDay } from './clean-day'

type Plant = (day: CleanDay) => void
const found = <T>(all: readonly T[], is: (one: T) => boolean): T => {
  const one = all.find(is)
  if (one === undefined) throw new Error('the clean day has changed: nothing to plant the fault in')
  return one
}
const shotOf = (day: CleanDay, id: string) => found(day.layout.shots, (s) => s.id === id)
const callOf = (day: CleanDay, id: string) => found(day.layout.calls, (c) => c.for === id)
const askedOf = (day: CleanDay, id: string) => found(day.shoot.shots ?? [], (s) => s.id === id)
const move = (day: CleanDay, id: string, setupStart: string, start: string, end: string) =>
  Object.assign(shotOf(day, id), { setupStart: at(setupStart), start: at(start), end: at(end) })
const meal = (day: CleanDay) => found(day.layout.meals, () => true)
const task = (day: CleanDay, id: string) => found(day.layout.tasks, (t) => t.id === id)

/** One fault for every rule; the rule must be found by name, and is not found on the clean day. */
const everybody = (d: CleanDay, call: string, wrap: string) =>
  (d.shoot.people ?? []).map(({ id }) => ({ person: id, call, wrap }))
/** Potatoes that take 55 min, in and out as written. */
const side = (d: CleanDay, on?: string, off?: string) => {
  d.shoot.sides = [{ id: 'potatoes', title: 'Potatoes', takes: seconds(55 * 60) }]
  const handled = (id: string, from: string) => ({
    id,
    start: at(from),
    end: at(`${from}:59`),
    people: ['presenter'],
  })
  if (on && off) d.layout.tasks.push(handled('potatoes-on', on), handled('potatoes-off', off))
}
const PLANTED: Readonly<Record<Rule, Plant>> = {
  'time-malformed': (d) => Object.assign(shotOf(d, 'bread'), { end: '15:20' }),
  'time-offset': (d) => Object.assign(shotOf(d, 'bread'), { end: '2027-05-15T14:20+00:00' }),
  'time-order': (d) => move(d, 'bread', '15:10', '15:20', '15:15'),
  'unknown-shot': (d) => d.layout.dropped.push({ id: 'sunrise', why: 'Too early.', wouldSave: 'Nothing.' }),
  'unknown-person': (d) => shotOf(d, 'bread').people.push('gaffer'),
  'unknown-camera': (d) => shotOf(d, 'bread').camera.push('C'),
  'unknown-task': (d) => Object.assign(task(d, 'plates'), { id: 'dishes' }),
  'shot-unaccounted': (d) => d.layout.dropped.splice(0),
  'shot-placed-and-dropped': (d) => d.layout.dropped.push({ id: 'bread', why: 'No time.', wouldSave: 'Time.' }),
  'shot-placed-twice': (d) => d.layout.shots.push(structuredClone(shotOf(d, 'bread'))),
  'drop-unexplained': (d) =>
    Object.assign(
      found(d.layout.dropped, () => true),
      { wouldSave: ' ' },
    ),
  'must-dropped-silently': (d) => Object.assign(askedOf(d, 'herbs'), { priority: 'must' }),
  'person-in-two-places': (d) => move(d, 'bread', '14:20', '14:25', '14:30'),
  'need-unmet': (d) => Object.assign(shotOf(d, 'raw'), { people: ['cam-1', 'cam-2'] }),
  'camera-on-two-shots': (d) => Object.assign(shotOf(d, 'bread'), { setupStart: at('14:58') }),
  'locked-camera-lent': (d) => Object.assign(shotOf(d, 'smoke'), { camera: ['B'] }),
  'too-few-cameras': (d) => shotOf(d, 'bread').camera.pop(),
  'named-camera-unused': (d) => Object.assign(shotOf(d, 'wide'), { camera: ['A'] }),
  'setup-short': (d) => Object.assign(shotOf(d, 'bread'), { setupStart: at('15:12') }),
  'hold-wrong': (d) => Object.assign(shotOf(d, 'pull'), { hold: 'tentative' }),
  'roll-short': (d) => Object.assign(shotOf(d, 'bread'), { end: at('15:19') }),
  'after-order': (d) => {
    const [raw, seasoning] = [shotOf(d, 'raw'), shotOf(d, 'seasoning')]
    const { setupStart, start, end } = raw
    Object.assign(raw, { setupStart: seasoning.setupStart, start: seasoning.start, end: seasoning.end })
    Object.assign(seasoning, { setupStart, start, end })
  },
  'between-outside': (d) => move(d, 'smoke', '17:44', '17:50', '17:55'),
  'pin-missed': (d) => Object.assign(askedOf(d, 'smoke'), { pin: '14:59' }),
  'locked-gap': (d) => Object.assign(shotOf(d, 'wide'), { end: at('20:10') }),
  'light-missed': (d) => Object.assign(askedOf(d, 'beauty'), { light: 'night' }),
  'food-state': (d) => move(d, 'raw', '18:32', '18:40', '18:47'),
  'lid-conflict': (d) => {
    Object.assign(askedOf(d, 'smoke'), { lid: 'open' })
    Object.assign(askedOf(d, 'lighting'), { lid: 'shut' })
    move(d, 'lighting', '18:20', '18:25', '18:32')
  },
  'moment-uncovered': (d) => move(d, 'pull', '19:59', '20:07', '20:11'),
  'moments-clash': (d) =>
    d.forecasts.get('hero')?.moments['sear-start']?.set(d.forecasts.get('hero')?.moments.pull ?? []),
  'must-in-tentative-window': (d) => {
    Object.assign(askedOf(d, 'hot'), { priority: 'must' })
    Object.assign(shotOf(d, 'hot'), { people: ['cam-1', 'stylist'] })
  },
  'call-missing': (d) => d.layout.calls.pop(),
  'call-moment': (d) => Object.assign(callOf(d, 'pull'), { moment: 'vents-open' }),
  'call-people': (d) => callOf(d, 'first-cut').people.pop(),
  'call-window-order': (d) => Object.assign(callOf(d, 'pull').window, { early: at('20:05'), likely: at('19:56') }),
  'call-window-forecast': (d) => Object.assign(callOf(d, 'pull').window, { late: at('20:30') }),
  'standby-late': (d) => Object.assign(callOf(d, 'probe'), { standby: at('19:03') }),
  'standby-missing': (d) => Object.assign(callOf(d, 'probe'), { standby: null }),
  'trigger-cook': (d) => Object.assign(callOf(d, 'pull').trigger ?? {}, { cook: 'twin' }),
  'trigger-without-probe': (d) => Object.assign(callOf(d, 'probe'), { trigger: { cook: 'hero', probe: 10 } }),
  'trigger-hot': (d) => Object.assign(callOf(d, 'pull').trigger ?? {}, { probe: 47 }),
  'trigger-late': (d) => Object.assign(callOf(d, 'pull').trigger ?? {}, { probe: 39 }),
  'follows-late': (d) => Object.assign(callOf(d, 'first-cut').follows ?? {}, { after: 15 * 60 }),
  'before-call': (d) => move(d, 'raw', '13:55', '14:18', '14:25'),
  'after-wrap': (d) => Object.assign(d.layout, { wrap: at('20:55') }),
  'crew-call-early': (d) => Object.assign(d.layout, { crewCall: at('13:30') }),
  'wrap-late': (d) => Object.assign(d.layout, { wrap: at('22:45') }),
  'overtime-untold': (d) => {
    Object.assign(d.shoot.day as object, { overtime: 3600 })
    Object.assign(d.layout, { wrap: at('22:45') })
  },
  'personal-missing': (d) => Object.assign(d.layout, { personal: [] }),
  'personal-call-late': (d) => Object.assign(d.layout, { personal: everybody(d, at('18:00'), d.layout.wrap) }),
  'personal-wrap-early': (d) => Object.assign(d.layout, { personal: everybody(d, d.layout.crewCall, at('18:00')) }),
  'meal-missing': (d) => Object.assign(meal(d), { people: ['presenter', 'cam-1', 'stylist'] }),
  'meal-late': (d) =>
    d.layout.meals.push({ start: at('20:45'), end: at('21:15'), people: meal(d).people.splice(2, 1) }),
  'second-meal-late': (d) => Object.assign(meal(d), { start: at('14:00'), end: at('14:30') }),
  'meal-short': (d) => Object.assign(meal(d), { end: at('16:55') }),
  'meal-interrupted': (d) => move(d, 'bread', '16:40', '16:45', '16:50'),
  'task-uncovered': (d) => Object.assign(task(d, 'plates'), { end: at('15:40') }),
  'task-need-unmet': (d) => Object.assign(task(d, 'plates'), { people: ['cam-2'] }),
  'task-left': (d) => Object.assign(askedOf(d, 'probe'), { place: 'bench' }),
  'fire-left': (d) => {
    const gone = ({ id }: { id: string }) => id !== 'ash-watch'
    d.shoot = { ...d.shoot, tasks: (d.shoot.tasks ?? []).filter(gone) }
    d.layout.tasks = d.layout.tasks.filter(gone)
  },
  'outside-hours': (d) =>
    Object.assign(
      found(d.shoot.people ?? [], (p) => p.id === 'cam-1'),
      { hours: { to: '19:00' } },
    ),
  'side-missing': (d) => side(d),
  'side-time': (d) => side(d, '20:00', '20:30'),
  'side-apart': (d) => side(d, '19:00', '19:56'),
  'fire-unwatched': (d) => Object.assign(task(d, 'fire-watch'), { start: at('17:45') }),
  'meat-on-missing': (d) => Object.assign(d.layout, { meatOn: {} }),
  'start-mismatch': (d) => Object.assign(d.layout, { start: at('18:00') }),
  'cook-late': (d) => {
    const hero = found(d.shoot.cooks, () => true)
    d.shoot = { ...d.shoot, cooks: [hero, { ...hero, id: 'twin', ready: { by: { cook: 'hero', moment: 'pull' } } }] }
    d.layout.meatOn.twin = d.layout.start
    d.forecasts.set(
      'twin',
      found([...d.forecasts.values()], () => true),
    )
  },
  'slice-missed': (d) => Object.assign(d.shoot.day ?? {}, { slice: { at: '19:30' } }),
  'capture-range': (d) => Object.assign(d.layout.capture.each, { 'hero/pull': 1.2 }),
  'capture-joint': (d) => Object.assign(d.layout.capture, { joint: 0.98 }),
  'capture-unknown': (d) => Object.assign(d.layout.capture.each, { 'hero/turn': 0.99 }),
  'capture-untrue': (d) => Object.assign(d.layout.capture.openLoop.each, { 'hero/pull': 0.9 }),
  'capture-unreached': (d) => d.forecasts.get('hero')?.moments.pull?.fill(Number.POSITIVE_INFINITY, 90),
}

const rulesFound = ({ shoot, layout, forecasts }: CleanDay) =>
  new Set(checkLayout(shoot, layout, forecasts).map((v) => v.rule))

describe('planted faults', () => {
  it('has a fault for every rule, and more than 25', () => {
    expect(Object.keys(PLANTED).sort()).toEqual([...RULES].sort())
    expect(RULES.length).toBeGreaterThanOrEqual(25)
  })
  it.each(RULES)('finds %s by name', (rule) => {
    const day = cleanDay()
    expect(rulesFound(day)).toEqual(new Set())
    PLANTED[rule](day)
    expect(rulesFound(day)).toContain(rule)
  })
  it('names the shots and people of every fault that has any', () => {
    const nameless = (['person-in-two-places', 'camera-on-two-shots', 'call-people', 'need-unmet'] as const).filter(
      (rule) => {
        const day = cleanDay()
        PLANTED[rule](day)
        const told = checkLayout(day.shoot, day.layout, day.forecasts).find((v) => v.rule === rule)
        return told === undefined || told.shots.length === 0
      },
    )
    expect(nameless).toEqual([])
  })
})
