import { formatClock } from '../plan/clock'
import type { Draft, Place } from './draft'
import type { FloatJob } from './float-job'
import { ALL_DAY } from './hours'
import { type DayProblem, minuteOf } from './problem'
import { RULES } from './rules'
import type { Edge } from './shot-window'
import { listed, quoted } from './words'

/** Why a shot that is not at a moment found no place, in one sentence. */
export function whyFloat(problem: DayProblem, draft: Draft, job: FloatJob): string {
  if (job.windows.length === 0) return `There is no ${words(job.shot.light)} on this day at this place.`
  const [lo, hi] = spanOf(problem, draft, job)
  if (!Number.isFinite(lo) || !Number.isFinite(hi)) return 'The moment it waits for never comes in this cook.'
  const from = clockOf(problem, lo)
  const to = clockOf(problem, hi)
  if (!job.span && hi - lo < job.roll)
    return job.shot.pin === undefined ? whyShort(job, hi - lo, from, to) : whyPinned(problem, draft, job)
  const short = scarce(problem, draft, job, lo - job.setup, hi)
  if (short !== null) return `From ${from} to ${to} ${short}.`
  if (leavesFire(problem, draft, job, lo, hi))
    return `From ${from} to ${to} ${watchers(problem)} must stay in sight of the fire, and this shot is at the ${job.shot.place}.`
  if (job.lid !== 'any') return `From ${from} to ${to} the lid is not ${job.lid} while the people it needs are free.`
  return `From ${from} to ${to} ${together(problem, job)} are never free at the same time for ${job.setup + job.roll} min.`
}
/** "cam-1 or cam-2, stylist and camera A". */
function together({ crew }: DayProblem, job: FloatJob): string {
  const people = needGroups(job, crew.people.length).map((ids) => ids.map((i) => crew.people[i]).join(' or '))
  const cameras = [...new Set(job.modes.flatMap((m) => m.cameras))].map((i) => `camera ${crew.cameras[i]}`)
  return listed(cameras.length > 0 ? [...people, cameras.join(' or ')] : people)
}
const words = (id: string | undefined) => id?.replaceAll('-', ' ') ?? 'light'
const clockOf = ({ clock, shoot }: DayProblem, minute: number) => formatClock(clock.toInstant(minute), shoot.zone)

/** Where it might stand, were it not pinned. */
function whyPinned(problem: DayProblem, draft: Draft, job: FloatJob): string {
  const pin = problem.clock.fromClock(job.shot.pin as string)
  const loose = ({ base, likely }: Edge) => base >= 0 || (likely !== pin && likely !== pin + job.roll)
  const windows = job.windows.map((w) => ({ lo: w.lo.filter(loose), hi: w.hi.filter(loose) }))
  const [lo, hi] = spanOf(problem, draft, { ...job, windows })
  return `It is pinned at ${job.shot.pin}, and all that it asks for is there from ${clockOf(problem, lo)} to ${clockOf(problem, hi)} alone.`
}

function whyShort(job: FloatJob, room: number, from: string, to: string): string {
  if (room > 0)
    return `Only ${Math.floor(room)} min remain from ${from} to ${to}, and it rolls ${job.roll} min with its handles.`
  if (job.shot.state === 'rested')
    return 'The roast is sliced as soon as its rest ends, so it is never rested and whole.'
  return job.shot.state
    ? `There is no time in which the roast is ${job.shot.state} and the rest of this shot holds.`
    : 'What it must come after ends when what it must come before has begun.'
}

/** The widest likely window of the roll, or its whole span. */
function spanOf(problem: DayProblem, draft: Draft, job: FloatJob): [number, number] {
  const at = (edges: readonly Edge[]) => edges.map((e) => minuteOf(e, draft.meatOn))
  if (job.span) return at(job.span) as [number, number]
  const limit = (problem.wrapLimit === null ? draft.wrap : problem.wrapLimit + problem.overtimeMin) - RULES.strikeMin
  const before = job.after.flatMap((i) => draft.floats[i]?.end ?? [])
  const windows = job.windows.map((w): [number, number] => [
    Math.max(draft.crewCall + job.setup, ...at(w.lo), ...before),
    Math.min(limit, ...at(w.hi)),
  ])
  return windows.sort((a, b) => b[1] - b[0] - (a[1] - a[0]))[0] ?? [0, 0]
}

type Busy = { readonly start: number; readonly end: number; readonly title: string }
/** The need that nobody can fill for long enough, and what takes them; null where each alone could be filled. */
function scarce(problem: DayProblem, draft: Draft, job: FloatJob, from: number, to: number): string | null {
  const { crew } = problem
  const length = job.span ? to - from : job.setup + job.roll
  const groups = [
    ...needGroups(job, crew.people.length).map((people) => ({
      ids: people,
      name: (i: number) => crew.people[i] as string,
      of: 'people' as const,
    })),
    {
      ids: [...new Set(job.modes.flatMap((m) => m.cameras))],
      name: (i: number) => `camera ${crew.cameras[i]}`,
      of: 'cameras' as const,
    },
  ]
  for (const { ids, name, of } of groups) {
    const busy = ids.map((i) => busyWith(problem, draft, of, i))
    const held = of === 'people' && job.span ? job.setup : length
    if (ids.length === 0 || busy.some((b) => longestGap(b, from, to) >= held)) continue
    const rivals = [
      ...new Set(
        busy
          .flat()
          .filter((b) => b.end > from && b.start < to)
          .sort((a, b) => b.end - b.start - (a.end - a.start))
          .map((b) => b.title),
      ),
    ]
    return `${listed(ids.map(name))} ${ids.length > 1 ? 'have' : 'has'} no ${Math.ceil(held)} min free beside ${listed(rivals.slice(0, 3).map(quoted))}`
  }
  return null
}

/** Who may stand at each place of the shot's staffing. */
function needGroups(job: FloatJob, people: number): number[][] {
  const places = job.modes.map((m) => [...m.operators, ...m.hands])
  const count = Math.min(places[0]?.length ?? 0, people)
  return Array.from({ length: count }, (_, i) => [...new Set(places.map((p) => p[i] as number))])
}

function busyWith(problem: DayProblem, draft: Draft, of: 'people' | 'cameras', id: number): Busy[] {
  const held = (place: Place | null | undefined, title: string, locked: boolean): Busy[] => {
    if (!place) return []
    const { operators, hands, cameras } = place.mode
    const inIt = of === 'cameras' ? cameras.includes(id) : operators.includes(id) || hands.includes(id)
    const end = locked && of === 'people' ? place.start : place.end
    return inIt ? [{ start: place.setupStart, end, title }] : []
  }
  const { from, to } = (of === 'people' && problem.hours[id]) || ALL_DAY
  const absent = [
    { start: Number.NEGATIVE_INFINITY, end: from, title: 'own hours' },
    { start: to, end: Number.POSITIVE_INFINITY, title: 'own hours' },
  ].filter(({ start, end }) => start < end)
  const meals = draft.meals.filter((m) => of === 'people' && m.people.includes(id))
  return [
    ...problem.moments.flatMap((job, i) => held(draft.moments[i], job.shot.title, false)),
    ...problem.floats.flatMap((job, i) => held(draft.floats[i], job.shot.title, job.shot.locked === true)),
    ...meals.map((m) => ({ start: m.start, end: m.end, title: 'the meal' })),
    ...absent,
  ].sort((a, b) => a.start - b.start)
}

function longestGap(busy: readonly Busy[], from: number, to: number): number {
  let free = from
  let longest = 0
  for (const b of busy) {
    longest = Math.max(longest, Math.min(b.start, to) - free)
    free = Math.max(free, b.end)
  }
  return Math.max(longest, to - free)
}

function leavesFire({ tasks, crew }: DayProblem, draft: Draft, job: FloatJob, lo: number, hi: number): boolean {
  return (
    job.away &&
    tasks.some((t) => {
      const burns = minuteOf(t.from, draft.meatOn) < hi && minuteOf(t.to, draft.meatOn) > lo - job.setup
      const everybodyGoes = job.modes.every((m) =>
        t.candidates.some((c) => c.every((p) => [...m.operators, ...m.hands].includes(p))),
      )
      return t.watch && burns && everybodyGoes && crew.people.length > 0
    })
  )
}
const watchers = ({ tasks, crew }: DayProblem) =>
  listed(
    [...new Set(tasks.filter((t) => t.watch).flatMap((t) => t.candidates.flat()))].map((p) => crew.people[p] as string),
  )
