import type { Call, Layout, PlacedShot } from '../day/layout'
import type { EntryDocument } from '../log/entry'
import { fromIso, toIso } from '../plan/clock'
import type { Shoot } from '../plan/shoot'
import { type Instant, instant, later, seconds } from '../units'

/** What is logged of a shot: when, what, and by whom. */
export interface ShotEntry {
  readonly at: Instant
  readonly kind: string
  readonly rest: EntryDocument
  readonly person: string | undefined
}
export interface MadeUpShot {
  readonly shoot: Shoot
  readonly shot: PlacedShot
  readonly call: Call | undefined
  readonly from: Instant
  readonly to: Instant
  readonly missed: boolean
  /** How far the camera's clock is from the set's. */
  readonly clockS: (camera: string) => number
  readonly soonAfter: (at: Instant) => Instant
}

/** Every so many of the shots that can be had again are soft at first. [estimate] */
const SOFT_EACH = 3
const FPS = 25
const BETWEEN_TAKES_S = 40

/** The takes of a shot, or that it was missed; a shot that happens once has one take, some others two. */
export function madeUpTakes(made: MadeUpShot): readonly ShotEntry[] {
  const { shoot, shot, call, from, to, missed, soonAfter } = made
  const number = (shoot.shots ?? []).findIndex(({ id }) => id === shot.id) + 1
  const person = shot.people[0]
  if (missed) {
    const rest = { shot: shot.id, state: 'missed', why: 'The camera was not there in time.' }
    return [{ at: soonAfter(to), kind: 'shot-state', rest, person }]
  }
  const twice = !call && number % SOFT_EACH === 0
  const half = instant((from + to) / 2)
  const takes = shot.camera.flatMap((camera, i): ShotEntry[] => {
    const slate = { shot: shot.id, slate: String(number), camera }
    const by = shot.people[i]
    if (!twice) return rolled(made, { ...slate, take: 1 }, [from, to], { verdict: 'good' }, by)
    const soft = { verdict: 'no-good', note: 'Soft.' }
    return [
      ...rolled(made, { ...slate, take: 1 }, [from, half], soft, by),
      ...rolled(made, { ...slate, take: 2 }, [later(half, seconds(BETWEEN_TAKES_S)), to], { verdict: 'good' }, by),
    ]
  })
  return [...takes, ...stateOf(made, soonAfter(to), person)]
}

type Slate = { readonly camera: string; readonly shot: string; readonly slate: string; readonly take: number }
function rolled(
  { shoot, clockS, soonAfter }: MadeUpShot,
  slate: Slate,
  [from, to]: readonly [Instant, Instant],
  end: EntryDocument,
  person: string | undefined,
): ShotEntry[] {
  const [start, stop] = [soonAfter(from), soonAfter(to)]
  const timecode = timecodeAt(start, shoot.zone, clockS(slate.camera))
  return [
    { at: start, kind: 'take', rest: { ...slate, roll: 'start', timecode }, person },
    { at: stop, kind: 'take', rest: { ...slate, roll: 'end', ...end }, person },
  ]
}

/** A shot that shows the food in one state says so, for continuity. */
function stateOf({ shoot, shot }: MadeUpShot, at: Instant, person: string | undefined): ShotEntry[] {
  const planned = shoot.shots?.find(({ id }) => id === shot.id)
  if (!planned?.state) return []
  const cook = planned.cook === undefined ? {} : { cook: planned.cook }
  const rest = { text: `As it stood for “${planned.title}”.`, shot: shot.id, state: planned.state, ...cook }
  return [{ at, kind: 'note', rest, person }]
}

/** Time of day as a camera counts it. */
export function timecodeAt(at: Instant, zone: string, offS: number): string {
  const when = later(at, seconds(offS))
  const two = (n: number) => String(n).padStart(2, '0')
  const [second, frame] = [Math.floor(when / 1000) % 60, Math.floor(((when % 1000) * FPS) / 1000)]
  return `${toIso(when, zone).slice(11, 16)}:${two(second)}:${two(frame)}`
}

/** What goes wrong on a made-up day: the last shot before the slice that nobody is called for. */
export function missedShot(layout: Layout, sliced: Instant | undefined): string | null {
  const free = layout.shots.filter(({ id, end }) => {
    const called = layout.calls.some((call) => call.for === id && call.moment !== null)
    return !called && (sliced === undefined || fromIso(end) <= sliced)
  })
  return (
    free.reduce<PlacedShot | null>((last, shot) => (last && last.start >= shot.start ? last : shot), null)?.id ?? null
  )
}
