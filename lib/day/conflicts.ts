import { formatClock, toInstant } from '../plan/clock'
import { burnsSolidFuel } from '../plan/moments'
import { lidClash, tieOf } from './clash'
import type { Mode } from './crew'
import type { Draft, DutyPlace, Place } from './draft'
import type { Conflict, Dropped } from './layout'
import { handleMin, type MomentJob } from './moment-job'
import { personalDays } from './personal'
import { type DayProblem, likelyMinute, minuteOf } from './problem'
import { readyConflicts } from './ready-cooks'
import { RULES } from './rules'
import { shareBelow } from './samples'
import { sideConflicts } from './side-conflicts'
import { comes, cooksOf, listed, momentName, quoted } from './words'

/** What does not fit, in plain words, with how often. */
export function conflictsOf(
  problem: DayProblem,
  draft: Draft,
  duties: readonly DutyPlace[],
  dropped: readonly Dropped[],
): Conflict[] {
  return [
    ...clashesOf(problem, draft),
    ...mustsDropped(problem, dropped),
    ...sliceConflicts(problem, draft),
    ...readyConflicts(problem, draft),
    ...lateConflicts(problem, draft),
    ...unwatchedFires(problem, draft),
    ...firesLeft(problem, draft),
    ...dutyConflicts(problem, duties),
    ...sideConflicts(problem, duties, draft.meatOn),
    ...mealConflicts(problem, draft),
    ...overtimeConflicts(problem, draft),
    ...turnaroundConflicts(problem, draft, duties),
  ]
}

type Standing = { readonly job: MomentJob; readonly place: Place; readonly index: number; readonly mode: number }
const standing = ({ moments }: DayProblem, draft: Draft): Standing[] =>
  moments.flatMap((job, index) => {
    const place = draft.moments[index]
    return place ? [{ job, place, index, mode: job.modes.indexOf(place.mode) }] : []
  })

function clashesOf(problem: DayProblem, draft: Draft): Conflict[] {
  const placed = standing(problem, draft).sort((a, b) => a.place.start - b.place.start)
  return placed.flatMap((a, i) =>
    placed.slice(i + 1).flatMap((b) => {
      const share = problem.clashes.share(a.index, a.mode, b.index, b.mode, draft.meatOn)
      return share > RULES.clashShare ? [clashOf(problem, a, b, share)] : []
    }),
  )
}

/** "In 4 cooks of 100 the vents come while camera A is still at the table." */
function clashOf({ crew }: DayProblem, first: Standing, next: Standing, share: number): Conflict {
  if (lidClash(first.job, next.job) >= share) return lidConflict(first, next, share)
  const [one, two] = [first.place.mode, next.place.mode]
  const cameras = one.cameras.filter((c) => two.cameras.includes(c)).map((c) => `camera ${crew.cameras[c]}`)
  const people = allOf(one)
    .filter((p) => allOf(two).includes(p))
    .map((p) => crew.people[p] as string)
  const who = cameras.length > 0 ? cameras : people
  const where = first.job.place === next.job.place ? `on ${quoted(first.job.shot.title)}` : `at the ${first.job.place}`
  const moment = next.job.moment
  const ready = tieOf(first.job, one, next.job, two) === 'chain' ? '' : ' or setting up'
  return {
    sentence: `In ${cooksOf(share)} ${momentName(moment)} ${comes(moment)} while ${listed(who)} ${who.length > 1 ? 'are' : 'is'} still ${where}${ready}.`,
    shots: [first.job.shot.id, next.job.shot.id],
    people,
    rule: 'two-moments-one-crew',
  }
}
function lidConflict(first: Standing, next: Standing, share: number): Conflict {
  const [a, b] = [first.job.shot, next.job.shot]
  const sentence = `In ${cooksOf(share)} ${quoted(a.title)} wants the lid ${a.lid} while ${quoted(b.title)} wants it ${b.lid}.`
  return { sentence, shots: [a.id, b.id], people: [], rule: 'lid' }
}
const allOf = (mode: Mode) => [...mode.operators, ...mode.hands]

function mustsDropped({ shoot }: DayProblem, dropped: readonly Dropped[]): Conflict[] {
  return dropped.flatMap((d) => {
    const shot = shoot.shots?.find((s) => s.id === d.id)
    if (shot?.priority !== 'must') return []
    return [
      {
        sentence: `${quoted(shot.title)} is a must and does not fit. ${d.why}`,
        shots: [d.id],
        people: [],
        rule: 'must-dropped',
      },
    ]
  })
}

function sliceConflicts(problem: DayProblem, draft: Draft): Conflict[] {
  const { shoot, clock, meatOn } = problem
  const slice = shoot.day?.slice
  if (!slice) return []
  const at = likelyMinute(problem, 0, 'first-slice', draft.meatOn)
  if (!Number.isFinite(at)) return []
  const likely = formatClock(clock.toInstant(at), shoot.zone)
  const say = (sentence: string): Conflict[] => [{ sentence, shots: [], people: [], rule: 'slice-wish' }]
  if (meatOn.sliceTooSoon) {
    const wish = 'at' in slice ? `at ${slice.at}` : `in the ${slice.in.replaceAll('-', ' ')}`
    const early = Math.ceil((at - wishedAt(problem, slice, at)) / 5) * 5
    return say(
      `The first slice cannot come ${wish}: after a call at ${shoot.day?.call ?? RULES.call} it is likely at ${likely}. Call the crew ${Math.max(5, early)} min sooner, or slice at ${likely}.`,
    )
  }
  if ('at' in slice) return sliceBeside(problem, slice.at, at, say)
  if (meatOn.inLight.length === 0)
    return say(
      `No ${slice.in.replaceAll('-', ' ')} comes within reach of this cook; the first slice is likely at ${likely}.`,
    )
  const chance = meatOn.inLight[meatOn.choices[0]?.indexOf(draft.meatOn[0] as number) ?? 0] ?? 0
  if (chance >= (slice.chance ?? 0.95)) return []
  return say(`The first slice falls outside the ${slice.in.replaceAll('-', ' ')} in ${cooksOf(1 - chance)}.`)
}
/** The slice may stand beside its wish: a must before the wrap outranks it, and a cook that runs late cannot help it. */
function sliceBeside(
  { clock, shoot, standing: running }: DayProblem,
  wished: string,
  at: number,
  say: (sentence: string) => Conflict[],
): Conflict[] {
  const beside = at - clock.fromClock(wished)
  if (Math.abs(beside) <= SLICE_NEAR_MIN) return []
  const late = Math.round(beside)
  const likely = formatClock(clock.toInstant(at), shoot.zone)
  if (late > 0) return say(`The first slice is likely at ${likely}, ${late} min after the wished ${wished}.`)
  if (running) return say(`The first slice is likely at ${likely}, ${-late} min before the wished ${wished}.`)
  return say(
    `The first slice is likely at ${likely}, ${-late} min before the wished ${wished}: later, a shot that must be taken would not be over before the wrap at ${shoot.day?.wrap}.`,
  )
}
const SLICE_NEAR_MIN = 5
const wishedAt = ({ clock }: DayProblem, slice: { at?: string } | { in: string }, otherwise: number) =>
  'at' in slice && slice.at ? clock.fromClock(slice.at) : otherwise

/** Moments that may come when the crew should be striking. */
function lateConflicts(problem: DayProblem, draft: Draft): Conflict[] {
  const { wrapLimit, shoot } = problem
  if (wrapLimit === null) return []
  return standing(problem, draft).flatMap(({ job }) => {
    const room = wrapLimit - (draft.meatOn[job.cook] as number) - job.after - handleMin
    const late = 1 - shareBelow(job.sorted, room)
    if (late <= RULES.clashShare) return []
    const sentence = `In ${cooksOf(late)} ${momentName(job.moment)} ${comes(job.moment)} after wrap at ${shoot.day?.wrap}.`
    return [{ sentence, shots: [job.shot.id], people: [], rule: 'moment-after-wrap' }]
  })
}

/** A fire burns and no task names anybody to stay in sight of it; who watches one has those beside it in sight. */
function unwatchedFires(problem: DayProblem, { meatOn }: Draft): Conflict[] {
  const { shoot, tasks, cooks, clock } = problem
  const fires = shoot.cooks.filter((c) => burnsSolidFuel(c.cooker.kind))
  if (fires.length === 0 || (shoot.people ?? []).length === 0) return []
  const tell = (sentence: string): Conflict => ({ sentence, shots: [], people: [], rule: 'fire-unwatched' })
  const watches = tasks
    .filter((t) => t.watch)
    .map((t) => ({ from: minuteOf(t.from, meatOn), to: minuteOf(t.to, meatOn) }))
  if (watches.length === 0)
    return [
      tell(
        'Nobody is named to stay in sight of the fire. Add a task from fire-lit to off-heat, with the role that watches it.',
      ),
    ]
  return fires.flatMap(({ id }) => {
    const cook = cooks.findIndex((c) => c.id === id)
    const off = likelyMinute(problem, cook, 'off-heat', meatOn)
    let at = likelyMinute(problem, cook, 'fire-lit', meatOn)
    for (const { from, to } of watches.toSorted((a, b) => a.from - b.from)) if (from <= at + 1) at = Math.max(at, to)
    if (!Number.isFinite(off) || at >= off - 1) return []
    const time = formatClock(clock.toInstant(at), shoot.zone)
    return [
      tell(
        `Nobody is named to stay in sight of the fire of "${id}" at ${time}. Add a task for it from fire-lit to off-heat.`,
      ),
    ]
  })
}

/** So long after the heat a fire that nobody has put out still burns. */
const STILL_BURNS_MIN = 15
/** The heat is over and the fire is not out: somebody stays until it is, or takes it over. */
function firesLeft(problem: DayProblem, { meatOn }: Draft): Conflict[] {
  const { shoot, tasks, cooks } = problem
  if ((shoot.people ?? []).length === 0 || !tasks.some((t) => t.watch)) return []
  const left = cooks.filter(({ id }, cook) => {
    const kind = shoot.cooks.find((c) => c.id === id)?.cooker.kind ?? ''
    const off = likelyMinute(problem, cook, 'off-heat', meatOn)
    const stays = (t: DayProblem['tasks'][number]) =>
      t.watch && minuteOf(t.from, meatOn) <= off + 1 && minuteOf(t.to, meatOn) >= off + STILL_BURNS_MIN
    return burnsSolidFuel(kind) && Number.isFinite(off) && !tasks.some(stays)
  })
  return left.slice(0, 1).map(({ id }) => ({
    sentence: `Nobody is named for the fire of "${id}" once the meat is off it, until it is out. Add a watch from off-heat to the time at which it is out or handed over.`,
    shots: [],
    people: [],
    rule: 'fire-left',
  }))
}

function dutyConflicts({ tasks, shoot, clock }: DayProblem, duties: readonly DutyPlace[]): Conflict[] {
  return duties
    .filter((d) => d.short)
    .map((d) => {
      const { task } = tasks[d.task] as DayProblem['tasks'][number]
      const [from, to] = [d.start, d.end].map((m) => formatClock(clock.toInstant(m), shoot.zone))
      const sentence = `Nobody is free for ${quoted(task.title)} from ${from} to ${to}. Give one more person the role "${task.needs[0]}".`
      return { sentence, shots: [], people: [], rule: 'task-unstaffed' }
    })
}

function mealConflicts({ crew }: DayProblem, { mealsMissing }: Draft): Conflict[] {
  if (mealsMissing === 0) return []
  const who = mealsMissing === 1 ? 'One person finds' : `${Math.min(mealsMissing, crew.people.length)} people find`
  return [
    {
      sentence: `${who} no time for a meal within 6 h. Drop a shot or add a person.`,
      shots: [],
      people: [],
      rule: 'meal-missing',
    },
  ]
}

/** Paid for, and so told. */
function overtimeConflicts({ wrapLimit, shoot, crew, clock }: DayProblem, { wrap }: Draft): Conflict[] {
  if (wrapLimit === null || wrap <= wrapLimit) return []
  const over = wrap - wrapLimit
  const sentence = `The day wraps at ${formatClock(clock.toInstant(wrap), shoot.zone)}, ${over} min after ${shoot.day?.wrap}: ${((over * crew.people.length) / 60).toFixed(1)} person-hours of overtime.`
  return [{ sentence, shots: [], people: [], rule: 'overtime' }]
}

/** Too little rest before the next day's call, person by person. */
function turnaroundConflicts(problem: DayProblem, draft: Draft, duties: readonly DutyPlace[]): Conflict[] {
  const { shoot, clock, crew } = problem
  const next = nextCallOf(problem)
  if (next === null) return []
  const asked = (shoot.day?.turnaround ?? RULES.turnaroundMin * 60) / 60
  return personalDays(problem, draft, duties).flatMap(({ person, wrap }) => {
    if (next - wrap >= asked) return []
    const id = crew.people[person] as string
    const rest = `${Math.floor((next - wrap) / 60)} h ${Math.round((next - wrap) % 60)} min`
    const sentence = `${id} wraps at ${formatClock(clock.toInstant(wrap), shoot.zone)} and is called at ${shoot.day?.nextCall} the next day: ${rest} of rest, and ${asked / 60} h are asked. Call ${id} at ${formatClock(clock.toInstant(wrap + asked), shoot.zone)}.`
    return [{ sentence, shots: [], people: [id], rule: 'turnaround' }]
  })
}
/** The next day's call is on the day after the shoot's date. */
function nextCallOf({ shoot, clock }: DayProblem): number | null {
  const { nextCall } = shoot.day ?? {}
  if (nextCall === undefined) return null
  const sameDay = clock.fromInstant(toInstant({ date: shoot.date, zone: shoot.zone }, nextCall))
  return sameDay + 1440
}
