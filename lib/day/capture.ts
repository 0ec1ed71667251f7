import { MOMENT_IDS } from '../model/moment-ids'
import { fromIso } from '../plan/clock'
import type { Shoot, Shot } from '../plan/shoot'
import { type CallRule, ruleTimes } from './call-rule'
import { type CookTimes, cookTimes } from './cook-times'
import type { DayForecast } from './day-forecast'
import { momentIn, placesIn, type Stood } from './day-replay'
import type { Call, Capture, Layout } from './layout'
import { RULES } from './rules'
import { asServed } from './slice-wait'

/**
 * How often each moment is caught when every member's own probe drives the calls, by replaying the layout's calls in
 * every member: crews come from what they are doing then, a shot that can be cut short lets them go within 15 min, and
 * one that holds at a moment only when it is over. `forecasts` may be an ensemble the layout has never seen.
 */
export function captureOf(shoot: Shoot, layout: Layout, forecasts: ReadonlyMap<string, DayForecast>): Capture {
  const { posts, others, members } = openReplay(shoot, layout, forecasts)
  const live = new Tally(posts)
  const byClock = new Tally(posts)
  for (let m = 0; m < members; m++) {
    const ready = readyLive(posts, others, m)
    live.add(posts.map((post, i) => Number.isFinite(ready[i]) && (ready[i] as number) <= dueIn(post, m)))
    byClock.add(posts.map((post) => caughtByClock(post, m)))
  }
  return { ...live.shares(members), openLoop: byClock.shares(members) }
}
const dueIn = ({ instant, before }: Post, member: number) => (instant[member] as number) - before + 1e-6

function openReplay(shoot: Shoot, layout: Layout, forecasts: ReadonlyMap<string, DayForecast>) {
  const cooks = shoot.cooks.flatMap((c) => {
    const forecast = forecasts.get(c.id)
    return forecast ? [cookTimes(c.id, asServed(shoot, c.id, forecast, layout.meatOn[c.id] ?? layout.start))] : []
  })
  const posts = postsOf(shoot, layout, cooks)
  const members = Math.min(...cooks.map((c) => c.members), ...(cooks.length === 0 ? [0] : []))
  return { posts, others: placesIn(shoot, layout, cooks), members }
}

/** Minutes in which everybody of a moment's shot stands ready, by member; infinite where nobody calls. */
export interface Replayed {
  readonly id: string
  readonly byTrigger: boolean
  readonly operators: readonly string[]
  /** Set up and due to roll. */
  readonly due: Float64Array
  readonly ready: Float64Array
  /** Had they been called at once: only an earlier moment holds them. */
  readonly soonest: Float64Array
}
/** What `captureOf` counts, shot by shot. `longestRelease`: every crew takes as long to come as it may. */
export function replayOf(
  shoot: Shoot,
  layout: Layout,
  forecasts: ReadonlyMap<string, DayForecast>,
  longestRelease = false,
): Replayed[] {
  const { posts, others, members } = openReplay(shoot, layout, forecasts)
  const never = () => posts.map(() => new Float64Array(members))
  const [ready, soonest] = [never(), never()]
  const atOnce = posts.map((post) => ({ ...post, called: post.called.map(() => Number.NEGATIVE_INFINITY) }))
  for (let m = 0; m < members; m++) {
    const stood = longestRelease ? 'longest' : others
    for (const [i, at] of readyLive(posts, stood, m).entries()) (ready[i] as Float64Array)[m] = at
    for (const [i, at] of readyLive(atOnce, stood, m).entries()) (soonest[i] as Float64Array)[m] = at
  }
  return posts.map((post, i) => ({
    id: post.shot.id,
    byTrigger: post.byTrigger,
    operators: post.operators,
    due: post.instant.map((t) => t - post.before),
    ready: ready[i] as Float64Array,
    soonest: soonest[i] as Float64Array,
  }))
}

/** One placed shot at a moment, with everything a member's replay asks of it. Minutes since the epoch, or by member. */
interface Post {
  readonly shot: Shot
  readonly key: string
  /** Where its moment comes among a cook's. */
  readonly rank: number
  readonly cook: string
  readonly place: string
  readonly who: readonly string[]
  readonly operators: readonly string[]
  readonly cameras: readonly string[]
  readonly instant: Float64Array
  readonly called: Float64Array
  readonly byTrigger: boolean
  /** Called on the sheet, so nobody has to be fetched. */
  readonly onTheSheet: boolean
  readonly setup: number
  readonly planned: { readonly ready: number; readonly end: number }
  readonly before: number
  readonly after: number
}

const minute = (iso: string) => fromIso(iso) / 60_000

function postsOf(shoot: Shoot, layout: Layout, cooks: readonly CookTimes[]): Post[] {
  return layout.shots.flatMap((placed): Post[] => {
    const shot = shoot.shots?.find((s) => s.id === placed.id)
    const cook = cooks.find((c) => c.id === (shot?.cook ?? shoot.cooks[0]?.id))
    const call = layout.calls.find((c) => c.for === placed.id)
    const meatOn = layout.meatOn[cook?.id ?? '']
    if (!shot?.at || !cook || !call || meatOn === undefined) return []
    const zero = minute(meatOn)
    const times = cook.at(shot.at.moment)
    if (!times) return []
    const roles = new Map((shoot.people ?? []).map((p) => [p.id, p.roles]))
    return [
      {
        shot,
        key: `${cook.id}/${shot.at.moment}`,
        rank: MOMENT_IDS.indexOf(shot.at.moment),
        cook: cook.id,
        place: shot.place ?? 'cooker',
        who: placed.people,
        operators: placed.people.filter((p) => roles.get(p)?.includes('camera')).slice(0, placed.camera.length),
        cameras: placed.camera,
        instant: times.map((t) => t + zero),
        called: calledAt(call, cook, zero),
        byTrigger: call.trigger !== null,
        onTheSheet: call.trigger === null && call.follows === null,
        setup: (shot.setup ?? RULES.setupMin * 60) / 60,
        planned: { ready: minute(placed.start), end: minute(placed.end) },
        before: (shot.at.before ?? RULES.beforeMin * 60) / 60,
        after: (shot.at.after ?? RULES.afterMin * 60) / 60,
      },
    ]
  })
}

function calledAt(call: Call, cook: CookTimes, zero: number): Float64Array {
  return ruleTimes(cook, ruleOf(call, zero)).map((t) => t + zero)
}
function ruleOf(call: Call, zero: number): CallRule {
  if (call.trigger) return { by: 'trigger', probe: call.trigger.probe }
  if (call.follows) return { by: 'follows', moment: call.follows.moment, afterMin: call.follows.after / 60 }
  return { by: 'clock', standby: call.standby === null ? Number.POSITIVE_INFINITY : minute(call.standby) - zero }
}

/** When a member's day has everybody of each post ready; the moments in the order in which they come. */
function readyLive(posts: readonly Post[], others: readonly Stood[] | 'longest', member: number): number[] {
  const ready = posts.map(() => Number.POSITIVE_INFINITY)
  const held = new Map<string, { until: number; post: Post }>()
  const order = posts
    .map((_, i) => i)
    .sort((a, b) => at(posts, a, member) - at(posts, b, member) || inOrder(posts, a, b))
  for (const i of order) {
    const post = posts[i] as Post
    const instant = post.instant[member] as number
    if (!Number.isFinite(instant)) continue
    const bound = [...post.who, ...post.cameras]
    ready[i] = Math.max(...bound.map((id) => readyAt(post, id, held.get(id), others, member)))
    for (const id of bound) held.set(id, { until: instant + post.after, post })
  }
  return ready
}
/** At one instant a cook's moments come in their own order, then in the sheet's. */
const inOrder = (posts: readonly Post[], a: number, b: number) =>
  (posts[a] as Post).rank - (posts[b] as Post).rank || a - b
const at = (posts: readonly Post[], i: number, member: number) => (posts[i] as Post).instant[member] as number

/** When one person or camera stands ready: fetched from what they do, or straight from the moment before. */
function readyAt(
  post: Post,
  id: string,
  held: { until: number; post: Post } | undefined,
  others: readonly Stood[] | 'longest',
  member: number,
): number {
  const called = post.called[member] as number
  if (called === Number.POSITIVE_INFINITY) return called
  const staysHere = held && held.until >= called && held.post.cook === post.cook && held.post.place === post.place
  if (staysHere) {
    const behind = held.post.operators.includes(id) || post.operators.includes(id) || post.cameras.includes(id)
    // Hands serve both at once; a camera in a chain was set up with the first and only re-frames.
    return behind ? held.until + RULES.reframeMin : called
  }
  const free = Math.max(called, held?.until ?? Number.NEGATIVE_INFINITY)
  const release = post.onTheSheet || (held && held.until > called) ? 0 : releaseOf(id, others, member, called)
  return free + release + post.setup
}

/** The rest of what they stand in, at most 15 min; the walk from anything else. */
function releaseOf(id: string, others: readonly Stood[] | 'longest', member: number, called: number): number {
  if (others === 'longest') return RULES.releaseMin
  let left: number = RULES.walkMin
  for (const stood of others) {
    if (!stood.who.includes(id)) continue
    const from = momentIn(stood.from, member)
    const to = momentIn(stood.to, member)
    if (from <= called && called < to) left = Math.max(left, Math.min(RULES.releaseMin, to - called))
  }
  return left
}

function caughtByClock({ planned, instant, before, after }: Post, member: number): boolean {
  const at = instant[member] as number
  return planned.ready <= at - before + 1e-6 && at + after <= planned.end + 1e-6
}

/** Counts by moment and all together. A moment with several shots is caught if all of them are. */
class Tally {
  private readonly counts = new Map<string, number>()
  private all = 0
  constructor(private readonly posts: readonly Post[]) {
    for (const { key } of posts) this.counts.set(key, 0)
  }
  add(caught: readonly boolean[]): void {
    const missed = new Set(this.posts.flatMap((post, i) => (caught[i] ? [] : [post.key])))
    for (const [key, n] of this.counts) if (!missed.has(key)) this.counts.set(key, n + 1)
    if (missed.size === 0) this.all++
  }
  shares(members: number): { each: Record<string, number>; joint: number } {
    const share = (n: number) => (members === 0 ? 0 : n / members)
    return { each: Object.fromEntries([...this.counts].map(([k, n]) => [k, share(n)])), joint: share(this.all) }
  }
}
