import { describe, expect, test } from 'vitest'
import { type PrepInput, prepListOf } from '../../../lib/export/prep-list'
import type { FuelSummary } from '../../../lib/model/fuel-need'
import type { Cook, Shoot } from '../../../lib/plan/shoot'
import { celsius, frac, kilograms, metres } from '../../../lib/units'
import { lambLayout, lambShoot } from './synthetic'

const shoot = lambShoot()
const hero = shoot.cooks[0] as Cook
const withRoast = (change: Partial<Cook['roast']>): Shoot => ({
  ...shoot,
  cooks: [{ ...hero, roast: { ...hero.roast, ...change } }],
})
const list = (change: Partial<PrepInput> = {}) =>
  prepListOf({ shoot, layout: lambLayout(), units: 'metric', revision: 3, ...change })
const ahead = (change: Partial<PrepInput>) => list(change).ahead.map(({ when, what }) => `${when}: ${what}`)

describe('prep list: what is done ahead', () => {
  test('a frozen roast has its latest thawing start, by the refrigerator and by water', () => {
    const [first] = ahead({ shoot: withRoast({ frozen: true }) })
    expect(first).toMatch(/^by Thursday 13 May 2027, 17:12: Latest into the refrigerator/)
    expect(first).toContain('takes 2 days')
    expect(first).toContain('4 h in cold water in a sealed bag, from Saturday 15 May 2027, 13:12')
  })
  test('a whole turkey thaws by its table', () =>
    expect(ahead({ shoot: withRoast({ cut: 'turkey-whole', mass: kilograms(6.8), frozen: true }) })[0]).toMatch(
      /^by Tuesday 11 May 2027, 17:12.*takes 4 days/,
    ))
  test('nothing is said of thawing where the roast is not frozen', () => {
    expect(ahead({}).join()).not.toContain('thaw')
  })
  test('a seasoning shot keeps the roast plain until it; without one it is salted the evening before', () => {
    expect(ahead({})[0]).toMatch(
      /^Friday 14 May 2027, evening: Salted and left uncovered in the refrigerator: leg of lamb/,
    )
    const shots = [
      ...(shoot.shots ?? []),
      { id: 'salt', title: 'Salted by hand', free: true, state: 'seasoned' as const },
    ]
    const layout = lambLayout()
    const placed = {
      ...(layout.shots[0] as (typeof layout.shots)[number]),
      id: 'salt',
      start: '2027-05-15T16:30+01:00',
    }
    const filmed = ahead({ shoot: { ...shoot, shots }, layout: { ...layout, shots: [...layout.shots, placed] } })
    expect(filmed[0]).toMatch(/^Saturday 15 May 2027, 16:30: Seasoned on camera, shot 18 "Salted by hand"/)
  })
  test('from the refrigerator straight to the fire, or out of it no sooner than food may stand', () => {
    expect(ahead({}).at(-1)).toMatch(
      /^Saturday 15 May 2027, 17:12: Straight from the refrigerator to the heat: leg of lamb/,
    )
    expect(ahead({ shoot: withRoast({ start: celsius(15) }) }).at(-1)).toMatch(
      /^not before Saturday 15 May 2027, 15:12/,
    )
    const hot = { ...withRoast({ start: celsius(15) }), weather: { air: celsius(35) } }
    expect(ahead({ shoot: hot }).at(-1)).toMatch(/^not before Saturday 15 May 2027, 16:12/)
  })
})

describe('prep list: fuel, shopping, thermometers', () => {
  test('fuel is what the forecast says, its reserve told; a cook that burns nothing has no line', () => {
    expect(list().fuel).toEqual([])
    const need: FuelSummary = {
      kind: 'charcoal',
      needed: { low: kilograms(1.5), likely: kilograms(1.9), high: kilograms(2.4) },
      reserveShare: frac(0.25),
      take: kilograms(2.4),
      sentence: '',
    }
    expect(list({ fuel: new Map([['hero', need]]) }).fuel).toEqual([
      'Charcoal: bring 2.4 kg, a reserve of 25 % included. The cook likely burns 1.9 kg, from 1.5 kg to 2.4 kg.',
    ])
  })
  test('shopping is the roast and the ingredients as written', () => {
    const card = {
      ingredients: [
        { what: 'coarse salt', much: '45 g' },
        { what: '', much: '' },
      ],
    }
    expect(list({ shoot: { ...shoot, card } }).shopping).toEqual([
      { what: expect.stringContaining('lamb'), much: '3.2 kg' },
      { what: 'coarse salt', much: '45 g' },
    ])
  })
  test('a roast that the recipe lists is bought once', () => {
    const name = list().shopping[0]?.what ?? ''
    const card = { ingredients: [{ what: `${name}, trimmed`, much: '3.2 kg' }] }
    expect(list({ shoot: { ...shoot, card } }).shopping).toEqual(card.ingredients)
  })
  test('water boils at less the higher the place', () => {
    const at = (m: number) =>
      list({ shoot: { ...shoot, place: { ...shoot.place, altitude: metres(m) } } }).thermometers[1] as string
    expect(at(0)).toContain('1013 hPa: 100.0 °C')
    const high = Number(/hPa: ([\d.]+) °C/.exec(at(1600))?.[1])
    expect(high).toBeGreaterThan(94)
    expect(high).toBeLessThan(95.5)
    expect(list().thermometers[0]).toContain('0 °C')
    expect(list({ units: 'us' }).thermometers.join()).toContain('32 °F')
  })
  test('an altitude nobody wrote is told as assumed', () => {
    const { altitude: _, ...place } = shoot.place
    expect(list({ shoot: { ...shoot, place } }).thermometers[1]).toContain('(assumed)')
  })
})

describe('prep list: kit', () => {
  test('every placed shot has a line, by time, with what it names', () => {
    const { shots } = list()
    expect(shots).toHaveLength(lambLayout().shots.length)
    expect(shots.map(({ time }) => time)).toEqual(shots.map(({ time }) => time).sort())
    expect(shots[0]).toMatchObject({ time: '15:20', shot: '1 Cooker and garden wall', camera: 'A' })
  })
  test('a sear hotter than the probe’s cable asks for a hand thermometer, gloves and long tongs', () => {
    const kit = list().kit.join(' ')
    expect(kit).toContain('Quick hand thermometer')
    expect(kit).toContain('gloves to the elbow')
    const oven = list({
      shoot: { ...shoot, cooks: [{ ...hero, cooker: { kind: 'oven' }, stages: hero.stages.slice(0, 2) }] },
    })
    expect(oven.kit.join(' ')).not.toMatch(/hand thermometer|elbow|charcoal|Board/)
  })
  test('cards and batteries go by how long a camera rolls', () =>
    expect(list().kit[0]).toMatch(/^Camera A: 12 shots, 2 h 21 min of rolling/))
})
