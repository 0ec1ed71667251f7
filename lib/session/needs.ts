import { markKey } from '../log/mark-key'
import type { MomentId } from '../model/moment-ids'
import { type Instant, instant, later, minutes } from '../units'
import { answersTo, callNow, hottestCore, momentAt } from './calls'
import { foodClock } from './food-clock'
import { earlyOf, expectedOf, type Session } from './session'
import type { SessionCook } from './session-day'

/** Something that one person must do by a time. It is raised when due, and over when it is no longer in the list. */
export interface Need {
  readonly id: string
  readonly due: Instant
  readonly deadline: Instant
  readonly roles: readonly string[]
  readonly action: string
  /** Raised whatever load its owner has. */
  readonly urgent: boolean
}

/** What the cook does at a moment and how long before it is told; common practice, no source. */
const AT_MOMENTS: Readonly<Partial<Record<MomentId, { readonly leadMin: number; readonly action: string }>>> = {
  turn: { leadMin: 3, action: 'Turn the roast' },
  'probe-in': { leadMin: 3, action: 'Put the probe in' },
  'vents-open': { leadMin: 3, action: 'Open the vents' },
  'sear-start': { leadMin: 2, action: 'Start the sear' },
  'off-heat': { leadMin: 3, action: 'Take the roast off the heat' },
  'first-slice': { leadMin: 5, action: 'Slice' },
}
/** A forecast that knows little does not have the cook stand at the fire longer than this. [estimate] */
const MOST_EARLY_MIN = 10
/** To the fire. */
const WALK_MIN = 1
const COOK = ['cook', 'presenter'] as const
const PRODUCER = ['producer', 'stylist', 'sound'] as const
const CHECK_AFTER_MIN = 5
const CHECK_WITHIN_MIN = 10
const FUEL_LEAD_MIN = 30
const FUEL_LAST_MIN = 10
const OUT_LEAD_MIN = 20
const MEAL_LEAD_MIN = 10
const UNANSWERED_MIN = 3

/** Everything that anybody must do now or later, as far as it is known. */
export function needsOf(session: Session): readonly Need[] {
  return [
    ...session.day.cooks.flatMap((cook) => [
      ...momentNeeds(session, cook),
      ...carryoverCheck(session, cook),
      ...fuelLow(session, cook),
      ...foodOut(session, cook),
    ]),
    ...(session.day.sides ?? []).flatMap((side) => foodOut(session, side)),
    ...troubles(session),
    ...meals(session),
    ...unanswered(session),
  ]
}

const marked = ({ told }: Session, cook: string, moment: MomentId) => told.marks[markKey(cook, moment)]?.at ?? null
const plus = (at: Instant, min: number) => later(at, minutes(min))
const named = ({ day }: Session, cook: string) => (day.cooks.length + (day.sides?.length ?? 0) > 1 ? ` (${cook})` : '')

const personName = ({ day }: Session, person: string) => day.people.find(({ id }) => id === person)?.name ?? person

/** A moment is over when it or one after it has been marked; turn may come on either side of the probe. */
function over(session: Session, cook: SessionCook, moment: MomentId): boolean {
  const from = cook.moments.indexOf(moment)
  const after = cook.moments
    .slice(from + 1)
    .filter((one) => one !== 'carryover-peak' && one !== 'turn' && one !== 'probe-in')
  return [moment, ...after].some((one) => marked(session, cook.id, one) !== null)
}

function momentNeeds(session: Session, cook: SessionCook): Need[] {
  return cook.moments.flatMap((moment): Need[] => {
    const what = AT_MOMENTS[moment]
    if (!what || over(session, cook, moment)) return []
    const likely = likelyAt(session, cook, moment)
    if (likely === null) return []
    const expected = expectedOf(session, cook.id, moment)
    const early = expected ? Math.max(earlyOf(expected), likely - MOST_EARLY_MIN * 60_000) : likely
    const due = instant(Math.min(plus(instant(early), -WALK_MIN), plus(likely, -what.leadMin)))
    const deadline = instant(Math.max(likely, due + minutes(2) * 1000))
    const action = `${what.action}${named(session, cook.id)}.`
    return [{ id: `${moment}/${cook.id}`, due, deadline, roles: COOK, action, urgent: true }]
  })
}

/** The moment that ends the roast is there as soon as the probe says so, whatever the forecast thinks. */
function likelyAt(session: Session, cook: SessionCook, moment: MomentId): Instant | null {
  const expected = expectedOf(session, cook.id, moment)?.likely ?? null
  const first = cook.moments.find((one) => one === 'vents-open' || one === 'sear-start' || one === 'off-heat')
  const read = hottestCore(session, cook.id)
  if (moment !== first || cook.pullAt === null || read === null || read < cook.pullAt) return expected
  return instant(Math.min(expected ?? session.now, session.now))
}

function carryoverCheck(session: Session, cook: SessionCook): Need[] {
  const off = marked(session, cook.id, 'off-heat')
  if (off === null || marked(session, cook.id, 'first-slice') !== null) return []
  const due = plus(off, CHECK_AFTER_MIN)
  const readSince = Object.values(session.told.probes).some(
    (probe) =>
      probe.cook === cook.id && probe.sensor.startsWith('core') && probe.readings.some((read) => read.at >= due),
  )
  if (readSince) return []
  const action = `Read the core: is it still climbing${named(session, cook.id)}?`
  return [
    {
      id: `carryover-check/${cook.id}`,
      due,
      deadline: plus(due, CHECK_WITHIN_MIN),
      roles: COOK,
      action,
      urgent: false,
    },
  ]
}

function fuelLow(session: Session, cook: SessionCook): Need[] {
  const out = session.forecast?.fuelOut?.[cook.id]
  if (out === undefined || marked(session, cook.id, 'off-heat') !== null) return []
  const feeds = session.told.fire.filter(({ entry }) => entry.cook === cook.id && entry.did === 'fed')
  const due = plus(out, -FUEL_LEAD_MIN)
  // The forecast that follows a feeding tells a later end.
  if (feeds.some(({ at }) => at >= due)) return []
  const action = `Feed the fire${named(session, cook.id)}.`
  return [
    {
      id: `fuel-low/${cook.id}/${feeds.length}`,
      due,
      deadline: plus(out, -FUEL_LAST_MIN),
      roles: COOK,
      action,
      urgent: true,
    },
  ]
}

/** From the slice, or from when somebody said that it stands out. */
function foodOut(session: Session, cook: Pick<SessionCook, 'id' | 'outLimit'>): Need[] {
  const deadline = foodClock(session, cook).discardAt
  if (deadline === null) return []
  const action = `Serve, chill or discard the food${named(session, cook.id)}: it has stood out.`
  const id = `food-out/${cook.id}/${session.told.food[cook.id]?.times ?? 0}`
  return [{ id, due: plus(deadline, -OUT_LEAD_MIN), deadline, roles: ['stylist', ...COOK], action, urgent: true }]
}

const troubles = (session: Session): Need[] =>
  (session.forecast?.troubles ?? []).map(({ id, cook, action, deadline }) => ({
    id: `trouble/${cook}/${id}`,
    due: session.now,
    deadline,
    roles: COOK,
    action: `${action.replace(/\.$/, '')}${named(session, cook)}.`,
    urgent: true,
  }))

function meals(session: Session): Need[] {
  let before = session.told.meals.filter(({ entry }) => entry.is === 'begins').length
  return session.day.meals.flatMap(({ start, gone }, i): Need[] => {
    // Meals are taken in their order.
    if (gone || before-- > 0) return []
    return [
      {
        id: `meal/${i}`,
        due: plus(start, -MEAL_LEAD_MIN),
        deadline: start,
        roles: PRODUCER,
        action: 'Break for the meal.',
        urgent: false,
      },
    ]
  })
}

/** Who was called and does not say that they come is fetched. */
function unanswered(session: Session): Need[] {
  return session.day.calls.flatMap((call): Need[] => {
    const { state, called, again } = callNow(session, call)
    if (state !== 'standby' || called === null) return []
    const answers = answersTo(session, call.id)
    const silent = call.people.filter(
      (id) => !answers.some(({ person, answer }) => person === id && answer !== 'cannot'),
    )
    const cannot = answers.findLast(
      ({ person, answer }) => answer === 'cannot' && person !== null && silent.includes(person),
    )
    if (silent.length === 0) return []
    const at = momentAt(session, call)
    const deadline = instant(
      Math.max(plus(called, UNANSWERED_MIN + 2), at === null ? 0 : at - (call.before + call.setup) * 1000),
    )
    const due = cannot ? cannot.at : plus(called, UNANSWERED_MIN)
    const action = cannot
      ? `Find a stand-in for ${personName(session, cannot.person ?? '')} in “${call.title}”.`
      : `Fetch ${silent.map((id) => personName(session, id)).join(', ')} for “${call.title}”.`
    const id = `unanswered/${call.id}${again ? `/again-${again.times}` : ''}`
    return [{ id, due, deadline, roles: PRODUCER, action, urgent: false }]
  })
}
