import { chanceOf } from '../../../lib/model/random'
import { parseShoot } from '../../../lib/plan/parse'
import { FOURTEEN, gardenDocument } from './garden-shoot'
import { syntheticForecast } from './synthetic-forecast'

type Part = Record<string, unknown>
const FORMS: Part[] = [
  { free: true },
  { between: ['meat-on', 'pull'] },
  { light: 'daylight' },
  { light: 'golden-hour' },
  { free: true, state: 'sliced' },
  { free: true, state: 'hot' },
  { free: true, state: 'raw' },
  { free: true, after: ['display'] },
  { from: 'meat-on', to: 'pull', locked: true },
  { from: 'probe-in', to: 'off-heat', locked: true, camera: 'A' },
]
const DAYS: Part[] = [
  { slice: { at: '18:30' } },
  { call: '12:00' },
  { call: '07:00', wrap: '23:00' },
  { call: '13:00', slice: { in: 'golden-hour' } },
  { call: '16:00', slice: { at: '18:30' } },
]
/** Summer, the nights on which clocks go forward and back, and where the sun does not set or does not rise. */
const WHERE: Part[] = [
  { date: '2027-05-15' },
  { date: '2027-03-27', day: { call: '18:00' } },
  { date: '2027-10-30', day: { call: '17:00', wrap: '12:00' } },
  { date: '2027-06-21', zone: 'Europe/Oslo', place: { lat: 69.65, lon: 18.96 }, day: { call: '15:00' } },
  { date: '2027-12-20', zone: 'Europe/Oslo', place: { lat: 69.65, lon: 18.96 }, day: { call: '09:00' } },
]
const ALONE: Part[] = [{ id: 'alone', roles: ['presenter', 'cook', 'camera', 'stylist'] }]

/** On every third day one or two dishes beside the roast, and a shot of one in some state. */
function anySides(seed: number): { readonly sides?: Part[]; readonly shots: Part[] } {
  if (seed % 3 !== 0) return { shots: [] }
  const { uniform } = chanceOf(seed, 3, 4)
  const pick = <T>(from: readonly T[]): T => from[Math.floor(uniform() * from.length)] as T
  const when = [{ ready: 'pull' }, { ready: 'off-heat' }, {}, { from: 'meat-on' }, { from: 'probe-in' }]
  const sides = Array.from({ length: pick([1, 2]) }, (_, i): Part => {
    const needs = pick([{}, { needs: ['stylist'] }, { needs: ['camera'] }])
    return { id: `side-${i}`, title: `Side ${i}`, takes: `${pick([20, 55, 180])} min`, ...pick(when), ...needs }
  })
  const filmed = { title: 'A side', cook: 'side-0', state: pick(['raw', 'cooking', 'hot']), needs: ['camera'] }
  return { sides, shots: [{ id: 'filmed', free: true, setup: '2 min', roll: '3 min', place: 'cooker', ...filmed }] }
}

/** A day nobody planned: random crew, shots of every form, lids, places and priorities. */
export function anyDay(seed: number) {
  const { uniform } = chanceOf(seed, 1, 2)
  const pick = <T>(from: readonly T[]): T => from[Math.floor(uniform() * from.length)] as T
  const operators = Array.from({ length: pick([1, 2, 3]) }, (_, i) => ({ id: `cam-${i + 1}`, roles: ['camera'] }))
  const people = [
    { id: 'presenter', roles: ['presenter', 'cook'] },
    { id: 'stylist', roles: pick([['stylist'], ['stylist', 'cook']]) },
    ...operators,
  ]
  const extra = Array.from({ length: pick([2, 6, 12]) }, (_, i): Part => {
    const form = pick(FORMS)
    const roll = form.locked ? {} : { roll: `${pick([2, 4, 8, 15])} min` }
    const needs = form.locked ? [] : pick([['camera'], ['camera', 'stylist'], ['camera', 'presenter']])
    const where = { place: pick(['cooker', 'bench', 'table']), lid: pick(['any', 'any', 'open', 'shut']) }
    const priority = pick(['must', 'should', 'could'])
    return {
      id: `x-${i}`,
      title: `Extra ${i}`,
      ...form,
      setup: `${pick([2, 5, 8])} min`,
      ...roll,
      needs,
      ...where,
      priority,
    }
  })
  const cameras = ['A', 'B', 'C'].slice(0, pick([1, 2, 3])).map((id) => ({ id }))
  const alone = uniform() < 0.15
  const beside = alone ? { shots: [] } : anySides(seed)
  const parsed = parseShoot(
    gardenDocument({
      people: alone ? ALONE : people,
      cameras,
      shots: [...FOURTEEN, ...extra, ...beside.shots],
      ...(beside.sides ? { sides: beside.sides } : {}),
      day: pick(DAYS),
      ...(uniform() < 0.5 ? pick(WHERE) : {}),
    }),
  )
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems))
  const cook = { members: 64, seed, toPull: pick([50, 120, 400, 780]), spread: pick([0.05, 0.13, 0.25]) }
  return { shoot: parsed.value, forecasts: new Map([['hero', syntheticForecast('hero', cook)]]) }
}
