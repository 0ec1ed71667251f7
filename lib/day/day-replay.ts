import type { MomentId } from '../model/moment-ids'
import { fromIso } from '../plan/clock'
import type { Shoot, Shot } from '../plan/shoot'
import type { CookTimes } from './cook-times'
import type { Layout, PlacedShot } from './layout'

/** A time that hangs on a moment in a member's day, or on none. Minutes since the epoch. */
export interface Hanging {
  readonly likely: number
  readonly shift: Float64Array | null
}
/** Something that can be cut short, with the people and cameras in it: a shot that is not at a moment, or a meal. */
export interface Stood {
  readonly who: readonly string[]
  readonly from: Hanging
  readonly to: Hanging
}
export const momentIn = ({ likely, shift }: Hanging, member: number) => likely + (shift?.[member] ?? 0)

const minute = (iso: string) => fromIso(iso) / 60_000

export function placesIn(shoot: Shoot, layout: Layout, cooks: readonly CookTimes[]): Stood[] {
  const shots = layout.shots.flatMap((placed) => {
    const shot = shoot.shots?.find((s) => s.id === placed.id)
    return shot && !shot.at ? stoodFor(shoot, shot, placed, cooks) : []
  })
  const meals = layout.meals.map((meal) => ({
    who: meal.people,
    from: { likely: minute(meal.start), shift: null },
    to: { likely: minute(meal.end), shift: null },
  }))
  return [...shots, ...meals]
}

function stoodFor(shoot: Shoot, shot: Shot, placed: PlacedShot, cooks: readonly CookTimes[]): Stood[] {
  const cook = cooks.find((c) => c.id === (shot.cook ?? shoot.cooks[0]?.id))
  const shift = cook ? shiftOf(shoot, shot, cook) : null
  const time = (iso: string): Hanging => ({ likely: minute(iso), shift })
  const [setup, start, end] = [time(placed.setupStart), time(placed.start), time(placed.end)]
  if (!shot.locked) return [{ who: [...placed.people, ...placed.camera], from: setup, to: end }]
  return [
    { who: placed.people, from: setup, to: start },
    { who: placed.camera, from: setup, to: end },
  ]
}

const FOOD: Partial<Record<NonNullable<Shot['state']>, MomentId>> = {
  hot: 'off-heat',
  rested: 'first-slice',
  sliced: 'first-slice',
}
/** Shots of food that is hot or sliced come sooner or later with it, and so do those that follow a moment's shot. */
function shiftOf(shoot: Shoot, shot: Shot, cook: CookTimes): Float64Array | null {
  const before = shoot.shots?.find((s) => s.at !== undefined && shot.after?.includes(s.id))
  const moment = (shot.state && FOOD[shot.state]) ?? (shot.between || shot.from ? undefined : before?.at?.moment)
  const times = moment && cook.at(moment)
  const inOrder = moment && cook.sorted(moment)
  if (!times || !inOrder) return null
  const likely = inOrder[(inOrder.length - 1) >> 1] as number
  return times.map((t) => (Number.isFinite(t) ? t - likely : 0))
}
