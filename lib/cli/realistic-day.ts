import { chanceOf } from '../model/random'
import type { ShootDocument } from '../plan/shoot'
import { type StandIn, standIn } from './stand-in-forecast'

/** A random day such as crews plan: its shoot file, and the joint moments of its cooks. */
export interface RandomDay {
  readonly document: ShootDocument
  readonly cooks: Readonly<Record<string, StandIn>>
}
type Part = Record<string, unknown>
type Draw = { readonly uniform: () => number; readonly pick: <T>(from: readonly T[]) => T }
const MEMBERS = 64
export interface Size {
  readonly shots: number
  readonly people?: number
  readonly members?: number
}

/**
 * Twenty, forty, eighty shots around one roast or two: moments whose windows overlap, more wanted of the hot and the
 * sliced roast than its life allows, a guest with little time, golden light, lids, chains of shots. Some days are full
 * to the brim, and what gives is not known beforehand.
 */
export function realisticDay(
  shots: number,
  seed: number,
  { people, members = MEMBERS }: Partial<Size> = {},
): RandomDay {
  const { uniform } = chanceOf(seed, shots, 0x7264)
  const draw: Draw = { uniform, pick: (from) => from[Math.floor(uniform() * from.length)] as (typeof from)[number] }
  const cookIds = uniform() < (shots - 20) / 90 ? ['hero', 'twin'] : ['hero']
  const toPullMin = 75 + Math.round(uniform() * 130)
  const restMin = draw.pick([12, 15, 20, 30])
  const cooks = Object.fromEntries(
    cookIds.map((id, i) => {
      const spread = draw.pick([0.05, 0.08, 0.13])
      return [id, standIn({ seed: seed * 100 + i, members, toPullMin: toPullMin + 15 * i, spread, restMin })]
    }),
  )
  const drawn = crewFor(shots, draw)
  const crew = people === undefined ? drawn : crewOfSize(people)
  const moments = cookIds.flatMap((id, i) => momentShots(id, i === 0 ? shots : shots / 2, crew.operators, draw))
  const day = dayFor(toPullMin, restMin, draw)
  const setting = { cooks: cookIds, crew, lengths: 0.7 + 0.9 * uniform(), call: minuteOf(day.call) }
  const others = Array.from({ length: shots - moments.length }, (_, i) => otherShot(i, setting, draw))
  return {
    cooks,
    document: {
      emberslate: 1,
      title: `Realistic day ${seed} of ${shots} shots`,
      date: draw.pick(['2027-05-15', '2027-08-21', '2027-10-02']),
      zone: 'Europe/Dublin',
      place: { lat: 53.35, lon: -6.26 },
      cooks: cookIds.map((id) => cookDocument(id, restMin)),
      day,
      people: crew.people,
      cameras: crew.cameras,
      tasks: cookIds.map((cook) => ({
        id: `watch-${cook}`,
        title: 'In sight of the fire',
        cook,
        from: 'fire-lit',
        to: 'off-heat',
        needs: ['cook'],
      })),
      shots: chained([...moments, ...others], draw),
    } as unknown as ShootDocument,
  }
}

const clock = (minute: number) =>
  `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`
const CALL = 8 * 60
const minuteOf = (time: unknown) => Number(String(time).slice(0, 2)) * 60 + Number(String(time).slice(3))
const fives = (minute: number) => Math.round(minute / 5) * 5

/** Called at eight; the slice is wanted at an hour, in the evening light, or as soon as it comes. */
function dayFor(toPullMin: number, restMin: number, { uniform, pick }: Draw): Part {
  const cook = toPullMin + 12 + restMin
  const slice = fives(CALL + 75 + uniform() * 120 + cook)
  const wrap = clock(fives(slice + 45 + uniform() * 100))
  return pick([
    { call: clock(CALL), slice: { at: clock(slice) }, wrap },
    { call: clock(CALL), slice: { at: clock(slice) }, wrap },
    { call: clock(CALL), wrap },
    { call: '13:00', slice: { in: 'golden-hour' }, wrap: '23:00' },
  ])
}

/** A crew of so many instead of the one drawn. */
function crewOfSize(count: number): Party {
  if (count === 1)
    return {
      operators: 1,
      guest: false,
      cameras: [{ id: 'C-1' }],
      people: [{ id: 'alone', roles: ['presenter', 'cook', 'camera', 'stylist'] }],
    }
  const operators = count >> 1
  const numbers = Array.from({ length: operators }, (_, i) => i + 1)
  const hands = Array.from({ length: count - operators - 1 }, (_, i) => ({
    id: `stylist-${i + 1}`,
    roles: ['stylist', 'cook'],
  }))
  const filming = numbers.map((n) => ({ id: `cam-${n}`, roles: ['camera'] }))
  return {
    operators,
    guest: false,
    cameras: numbers.map((n) => ({ id: `C-${n}` })),
    people: [{ id: 'presenter', roles: ['presenter', 'cook'] }, ...filming, ...hands],
  }
}
interface Party {
  readonly operators: number
  readonly people: readonly Part[]
  readonly cameras: readonly Part[]
  readonly guest: boolean
}
function crewFor(shots: number, { uniform, pick }: Draw): Party {
  const operators = pick(shots <= 20 ? [1, 2, 2] : shots <= 40 ? [2, 2, 3] : [3, 4])
  const stylists = shots <= 40 ? 1 : 2
  const many = (count: number, id: string, roles: string[]) =>
    Array.from({ length: count }, (_, i) => ({ id: `${id}-${i + 1}`, roles }))
  const guest = uniform() < 0.5
  const people = [
    { id: 'presenter', roles: ['presenter', 'cook'] },
    ...many(operators, 'cam', ['camera']),
    ...many(stylists, 'stylist', uniform() < 0.6 ? ['stylist', 'cook'] : ['stylist']),
    ...(guest ? [{ id: 'guest', roles: ['guest'] }] : []),
  ]
  return {
    operators,
    people,
    guest,
    cameras: many(operators + (uniform() < 0.4 ? 1 : 0), 'C', []).map(({ id }) => ({ id })),
  }
}

const cookDocument = (id: string, restMin: number): Part => ({
  id,
  roast: { cut: 'pork-loin-bone-in', mass: '3.6 kg', start: '4 °C' },
  cooker: { kind: 'kettle-charcoal' },
  stages: [
    { do: 'preheat', at: '150 °C' },
    { do: 'roast', at: '150 °C', until: { core: '57 °C' }, turn: { at: 'half' }, probe: { at: 'turn' } },
    { do: 'sear', at: '300 °C', until: { core: '63 °C' }, max: '15 min' },
    { do: 'rest', until: { after: `${restMin} min` }, max: '60 min' },
  ],
})

type MomentRow = readonly [moment: string, title: string, hands: readonly string[], place: string, priority: string]
const MOMENTS: readonly MomentRow[] = [
  ['fire-lit', 'Lighting the fire', ['presenter'], 'cooker', 'must'],
  ['meat-on', 'Meat on', ['presenter'], 'cooker', 'must'],
  ['turn', 'The turn', ['presenter'], 'cooker', 'should'],
  ['probe-in', 'Probe goes in', ['presenter'], 'cooker', 'should'],
  ['pull', 'The reading at pull', [], 'cooker', 'must'],
  ['vents-open', 'Vents open', ['presenter'], 'cooker', 'should'],
  ['sear-start', 'The sear', ['presenter'], 'cooker', 'must'],
  ['off-heat', 'Off the heat', ['presenter'], 'cooker', 'should'],
  ['first-slice', 'First slice', ['presenter'], 'table', 'must'],
]
/** The roast's own moments, and with more shots a second angle on some. */
function momentShots(cook: string, shots: number, operators: number, { uniform, pick }: Draw): Part[] {
  const shotAt = ([moment, title, hands, place, priority]: MomentRow, angle: string): Part => ({
    id: `${cook}-${moment}${angle}`,
    title: `${title}${angle && ', close'}`,
    at: { moment, before: pick(['0 min', '1 min']), after: pick(['1 min', '2 min', '3 min']) },
    cook,
    setup: `${pick([3, 5, 6, 8])} min`,
    needs: ['camera', ...(angle ? [] : hands)],
    place,
    priority: angle ? pick(['should', 'could']) : cook === 'twin' ? 'should' : priority,
  })
  const wide = MOMENTS.filter((row) => row[4] === 'must' || uniform() < 0.75).map((row) => shotAt(row, ''))
  const close = MOMENTS.filter(() => operators > 1 && uniform() < shots / 130).map((row) => shotAt(row, '-close'))
  return [...wide, ...close]
}

type Form = readonly [weight: number, title: string, form: Part, roll: readonly number[], hands: readonly string[]]
/** What is shot beside the moments, how often, and how long it rolls. */
const FORMS: readonly Form[] = [
  [3, 'Hands on the bench', { free: true, place: 'bench' }, [4, 8, 12], ['stylist']],
  [3, 'Piece to camera', { free: true }, [5, 10, 15], ['presenter']],
  [2, 'Raw roast', { free: true, state: 'raw', place: 'bench' }, [4, 6, 10], ['stylist']],
  [2, 'Smoke at the vent', { between: ['meat-on', 'pull'], lid: 'shut', place: 'cooker' }, [3, 5, 8], []],
  [1, 'Under the lid', { between: ['meat-on', 'pull'], lid: 'open', place: 'cooker' }, [2, 3], []],
  [2, 'Sides on the board', { between: ['meat-on', 'first-slice'], place: 'bench' }, [5, 10, 15], ['stylist']],
  [2, 'Roast on the board, hot', { free: true, state: 'hot', place: 'table' }, [2, 3], []],
  [3, 'Sliced beauty', { free: true, state: 'sliced', place: 'table' }, [3, 5, 7], ['stylist']],
  [2, 'Garden', { light: 'daylight', place: 'garden' }, [4, 8, 12], []],
  [1, 'Low sun', { light: 'golden-hour', place: 'garden' }, [5, 8], []],
  [1, 'Tasting', { free: true, tasting: true, place: 'table' }, [6, 10], ['presenter']],
  [1, 'Locked off', { from: 'meat-on', to: 'pull', locked: true, place: 'cooker' }, [], []],
]
const BY_WEIGHT = FORMS.flatMap(([weight, ...form]) => Array.from({ length: weight }, () => form))

interface Setting {
  readonly cooks: readonly string[]
  readonly crew: Party
  readonly lengths: number
  readonly call: number
}
function otherShot(i: number, setting: Setting, draw: Draw): Part {
  const { uniform, pick } = draw
  const setup = `${pick([2, 3, 5, 8])} min`
  const common = { id: `x-${i + 1}`, setup, priority: pick(['should', 'could']) }
  if (setting.crew.guest && uniform() < 0.12) return guestShot(i, common, setting, draw)
  const [title, { tasting, ...form }, rolls, hands] = pick(BY_WEIGHT)
  const cook = pick(setting.cooks)
  const roll = rolls.length > 0 ? { roll: `${Math.max(1, Math.round(pick(rolls) * setting.lengths))} min` } : {}
  const needs = form.locked ? [] : ['camera', ...hands]
  // Only what may be shot through the day can be a must: with twenty minutes to live it is not a plan.
  const must = !(form.state || form.light || form.locked) && uniform() < 0.08
  const after = tasting ? { after: [`${cook}-first-slice`] } : {}
  return {
    ...common,
    title: `${title} ${i + 1}`,
    cook,
    ...form,
    ...roll,
    ...after,
    needs,
    ...(must && { priority: 'must' }),
  }
}

/** Somebody from outside, here for an hour and a half. */
function guestShot(i: number, common: Part, { call, lengths }: Setting, { uniform, pick }: Draw): Part {
  const from = fives(call + 45 + uniform() * 60)
  const roll = `${Math.max(2, Math.round(pick([8, 12, 18]) * lengths))} min`
  const needs = ['camera', 'guest', ...pick([[], ['presenter']])]
  return { ...common, title: `With the guest ${i + 1}`, between: [clock(from), clock(from + 90)], roll, needs }
}

/** Some shots follow another: hands before the tasting of what they made. */
function chained(shots: Part[], { uniform }: Draw): Part[] {
  const free = shots.filter((s) => s.free && !s.state)
  return shots.map((shot) => {
    const before = shot.free && !shot.state && uniform() < 0.15 ? free[free.indexOf(shot) - 1] : undefined
    return before ? { ...shot, after: [before.id] } : shot
  })
}
