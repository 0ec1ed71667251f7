import type { CookerKind } from '../model/cook'
import { cutById } from '../model/cuts'
import { DONENESS_WORDS } from '../model/doneness'
import { celsius, formatTemp, type UnitSystem } from '../units'
import { coverageFor, type Light, STARTING_SHOTS, startingDay } from './coverage'
import { valueAt } from './edit'
import { typicalMass } from './follow-answers'
import { type HowDone, usualDone } from './how-done'
import { type CookSketch, momentsOf } from './moments'
import type { ShootDocument } from './shoot'
import { leftOf, listAt, peopleOf, sketchOf } from './sketch'
import { startingStages } from './starting-cook'

/** What the form for a new shoot asks; quantities as the person writes them. */
export interface NewShoot {
  readonly title: string
  readonly cut: string
  readonly mass: string
  readonly thickness?: string
  readonly start?: string
  readonly cooker: string
  readonly cookerAt: string
  /** "start", "turn" (at half time, with the turn) or a time after meat-on. */
  readonly probe: string
  readonly pull: string
  /** Without a sear the pull is the end of the heat. */
  readonly sear?: { readonly at: string; readonly off: string }
  readonly rest: string
  readonly slice?: { readonly at: string } | { readonly in: Light }
  readonly call?: string
  readonly wrap?: string
  readonly date: string
  readonly zone: string
  readonly place: { readonly lat: number; readonly lon: number; readonly altitude?: string; readonly name?: string }
}

/** Of a day, what stands around its cook. */
type DayFields = Pick<NewShoot, 'title' | 'date' | 'zone' | 'place' | 'slice' | 'call' | 'wrap'>

/** The six answers of a newcomer, and the day and place they are for. */
export interface FirstAnswers extends DayFields {
  readonly cut: string
  readonly mass?: string
  readonly thickness?: string
  readonly cooker: CookerKind
  readonly done?: HowDone
}
/** A whole day from six answers; what they leave open is as is usual for the cut. */
export function startingShoot(asked: FirstAnswers, units: UnitSystem = 'metric'): ShootDocument {
  const cut = cutById(asked.cut)
  if (!cut) throw new RangeError(`no cut ${asked.cut} in the catalogue`)
  const done = asked.done ?? usualDone(cut)
  const start = formatTemp(celsius(4), units)
  const roast = given({
    cut: cut.id,
    mass: asked.mass ?? typicalMass(cut, units),
    start,
    thickness: asked.thickness,
  })
  const stages = startingStages({ cut, cooker: asked.cooker, done }, units)
  const target = DONENESS_WORDS.find((word) => word === done)
  const cook = {
    id: 'hero',
    roast,
    cooker: { kind: asked.cooker },
    stages,
    ...(target ? { target: { doneness: target } } : {}),
  }
  return dayAround(cook, asked)
}

/** A whole day at once: the cook as asked, a crew of four, two cameras, the fire watched, the starting shots. */
export const newShootDocument = (fields: NewShoot): ShootDocument => dayAround(cookDocument(fields), fields)

function dayAround(cook: CookSketch, fields: DayFields): ShootDocument {
  const day = startingDay(cook.id)
  const light = fields.slice && 'in' in fields.slice ? fields.slice.in : undefined
  return {
    emberslate: 1,
    seed: 1,
    title: fields.title,
    date: fields.date,
    zone: fields.zone,
    place: fields.place,
    authority: 'US',
    cooks: [cook],
    day: given({ call: fields.call, wrap: fields.wrap, slice: fields.slice, turnaround: '11 h' }),
    ...day,
    shots: coverageFor(cook, day.people, day.cameras, light),
  }
}

function cookDocument(fields: NewShoot) {
  const roast = given({
    cut: fields.cut,
    mass: fields.mass,
    start: fields.start ?? '4 °C',
    thickness: fields.thickness,
  })
  const stages = [
    { do: 'preheat', at: fields.cookerAt },
    {
      do: 'roast',
      at: fields.cookerAt,
      until: { core: fields.pull },
      ...(fields.probe === 'turn' ? { turn: { at: 'half' } } : {}),
      probe: { at: fields.probe, lead: '250 °C' },
    },
    ...(fields.sear ? [{ do: 'sear', at: fields.sear.at, until: { core: fields.sear.off }, max: '25 min' }] : []),
    { do: 'rest', until: { after: fields.rest }, max: '40 min' },
  ]
  return { id: 'hero', roast, cooker: { kind: fields.cooker }, stages }
}

const given = (members: Record<string, unknown>) =>
  Object.fromEntries(Object.entries(members).filter(([, value]) => value !== undefined))

/**
 * The document of a form still being filled in, its starting shots matched to the plan: those of moments that the plan
 * no longer has go, those it has now come, but for what was left out. Shots of the person's own stay as they are.
 */
export function withCoverage(document: ShootDocument): ShootDocument {
  const cook = sketchOf(valueAt(document, '/cooks/0'))
  if (!cook) return document
  const light = valueAt(document, '/day/slice/in') as Light | undefined
  const left = leftOf(document)
  const fresh = coverageFor(cook, peopleOf(document), listAt(document, '/cameras'), light).filter(
    ({ id }) => !left.includes(id),
  )
  const starting = new Set(STARTING_SHOTS.map(({ id }) => id))
  const own = listAt<{ id: string }>(document, '/shots').filter(({ id }) => !starting.has(id))
  return { ...document, shots: [...fresh, ...own] }
}

/** The document without shots at moments that their cook does not have: after a sear or a turn was taken out of a plan. */
export function withoutAbsentMoments(document: ShootDocument): ShootDocument {
  const cooks = listAt<Record<string, unknown>>(document, '/cooks').flatMap((cook) => sketchOf(cook) ?? [])
  const shots = listAt<Record<string, unknown>>(document, '/shots')
  const kept = shots.filter((shot) => {
    const cook = shot.cook === undefined ? cooks[0] : cooks.find(({ id }) => id === shot.cook)
    const moment = valueAt(shot, '/at/moment')
    return !cook || typeof moment !== 'string' || momentsOf(cook).some((id) => id === moment)
  })
  if (kept.length === shots.length) return document
  const left = new Set(kept.map((shot) => shot.id))
  const freed = kept.map((shot) =>
    Array.isArray(shot.after) ? { ...shot, after: shot.after.filter((id) => left.has(id)) } : shot,
  )
  return { ...document, shots: freed }
}
