import { MOMENT_IDS, type MomentId } from '../model/moment-ids'
import type { Shoot, Shot } from '../plan/shoot'
import { sideOf } from '../plan/side-tasks'
import { type Mask, type Mode, modesFor } from './crew'
import { type MomentJob, minutesOf, type Unfit, weightOf } from './moment-job'
import { RULES } from './rules'
import {
  type Anchor,
  type Edge,
  edgeOf,
  type FloatContext,
  rolledMin,
  type ShotWindow,
  shotWindows,
} from './shot-window'
import { cookIndex } from './side-jobs'

/** A shot that may be dropped at a price: anything that is not at a moment. Whole minutes. */
export interface FloatJob {
  readonly shot: Shot
  readonly cook: number
  readonly weight: number
  readonly setup: number
  /** With its handles, rounded out. */
  readonly roll: number
  /** From one edge to the other, whatever the roll. */
  readonly span: readonly [Edge, Edge] | null
  readonly windows: readonly ShotWindow[]
  readonly anchor: Anchor | null
  /** Float jobs that must have ended before. */
  readonly after: readonly number[]
  readonly modes: readonly Mode[]
  /** Whom and what it needs however it is staffed. */
  readonly always: Mode
  readonly lid: 'open' | 'shut' | 'any'
  /** By moment shot: this one always comes after it or ends before it, so neither cuts the other short. */
  readonly apart: readonly boolean[]
  /** Of the roast before it goes on. */
  readonly raw: boolean
  /** Out of sight of the fire. */
  readonly away: boolean
}
export const inSightOfFire = (place: string | undefined) => place === undefined || place === 'cooker'

export function floatJobs(context: FloatContext): { jobs: FloatJob[]; unfit: Unfit[] } {
  const shots = (context.shoot.shots ?? []).filter((s) => !s.at)
  const staffed = shots.map((shot) => ({ shot, modes: modesFor(context.crew, shot) }))
  const able = staffed.filter((s) => s.modes.length > 0)
  const unfit = staffed.filter((s) => s.modes.length === 0)
  const indexOf = new Map(able.map((s, i) => [s.shot.id, i]))
  return {
    jobs: able.map(({ shot, modes }) => floatJob(shot, modes, indexOf, context)),
    unfit: unfit.map(({ shot }) => ({ shot, reason: 'nobody', share: 0 })),
  }
}

function floatJob(shot: Shot, modes: Mode[], indexOf: ReadonlyMap<string, number>, context: FloatContext): FloatJob {
  const cook = cookIndex(context.shoot, context.cooks, shot.cook)
  const ofSide = sideOf(context.shoot, shot.cook) !== undefined
  const anchor = ofSide ? null : anchorOf(shot, cook, context)
  const earlier = [...(shot.after ?? []), ...seasoningShots(shot, context.shoot)]
  const at = (edge: string) => edgeOf(context, cook, anchor, edge)
  return {
    shot,
    cook,
    weight: weightOf(shot),
    setup: Math.ceil(minutesOf(shot.setup, RULES.setupMin)),
    roll: rolledMin(shot),
    span: shot.from !== undefined && shot.to !== undefined ? [at(shot.from), at(shot.to)] : null,
    windows: shotWindows(shot, cook, anchor, earlier, context),
    anchor,
    after: earlier.flatMap((id) => indexOf.get(id) ?? []),
    modes,
    always: alwaysNeeded(modes),
    lid: shot.lid ?? 'any',
    apart: context.moments.map((job) => !ofSide && job.cook === cook && keepsApart(shot, job)),
    raw: (!ofSide && shot.state === 'raw') || shot.state === 'seasoned' || isSeasoning(shot),
    away: !inSightOfFire(shot.place),
  }
}

const common = (masks: readonly Mask[]): Mask =>
  (masks[0] ?? []).map((_, w) => masks.reduce((all, mask) => all & (mask[w] as number), -1))
const alwaysNeeded = (modes: readonly Mode[]): Mode => ({
  operators: [],
  hands: [],
  cameras: [],
  setupMask: common(modes.map((m) => m.setupMask)),
  rollMask: common(modes.map((m) => m.rollMask)),
})

type States = Partial<Record<NonNullable<Shot['state']>, MomentId>>
const BEGINS: States = { cooking: 'meat-on', hot: 'off-heat', rested: 'off-heat', sliced: 'first-slice' }
const ENDS: States = { raw: 'meat-on', seasoned: 'meat-on', cooking: 'off-heat', rested: 'first-slice' }

/** Moments come in one order in every member: a shot bounded by one is bounded by all before or after it. */
function keepsApart(shot: Shot, job: MomentJob): boolean {
  if (shot.after?.includes(job.shot.id)) return true
  const place = (edge: string | undefined) => (MOMENT_IDS as readonly string[]).indexOf(edge ?? '')
  const begins = Math.max(place(shot.between?.[0]), place(shot.state && BEGINS[shot.state]))
  const ends = [place(shot.between?.[1]), place(shot.state && ENDS[shot.state])].filter((i) => i >= 0)
  return place(job.moment) <= begins || ends.some((i) => i <= place(job.moment))
}

const isSeasoning = (shot: Shot) => shot.id.startsWith('season')

/** A seasoned roast has been seasoned: the shot whose id begins with "season" comes first. */
function seasoningShots(shot: Shot, shoot: Shoot): string[] {
  if (shot.state !== 'seasoned' || isSeasoning(shot)) return []
  const first = shoot.cooks[0]?.id
  return (shoot.shots ?? [])
    .filter((s) => isSeasoning(s) && (s.cook ?? first) === (shot.cook ?? first))
    .map((s) => s.id)
}

const STATE_ANCHOR: Partial<Record<NonNullable<Shot['state']>, MomentId>> = {
  hot: 'off-heat',
  rested: 'first-slice',
  sliced: 'first-slice',
}
function anchorOf(shot: Shot, cook: number, { cooks, moments }: FloatContext): Anchor | null {
  // A pinned shot stands by the clock, whenever its moment comes.
  if (shot.pin !== undefined) return null
  const byState = shot.state && STATE_ANCHOR[shot.state]
  if (byState && cooks[cook]?.at(byState)) return { cook, moment: byState }
  if (shot.between || shot.from) return null
  const before = moments.find((job) => shot.after?.includes(job.shot.id) && spread(job) > 2)
  return before ? { cook: before.cook, moment: before.moment } : null
}
const spread = (job: MomentJob) => (job.sorted.at(-1) as number) - (job.sorted[0] as number)
