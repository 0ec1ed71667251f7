import { describe, expect, test } from 'vitest'
import type { Drawing, TextMark } from '../../../lib/export/drawing'
import { drawHeatLine, type HeatLineInput } from '../../../lib/export/heat-line'
import { overlap, textBox, textWidth } from '../../../lib/export/text-width'
import { celsius, type UnitSystem } from '../../../lib/units'
import { COOK, fromMeatOn, lambLayout, lambShoot, MEAT_ON, PLACE, syntheticForecast, ZONE } from './synthetic'

const cook = (change = {}) => ({ forecast: syntheticForecast(change), meatOn: MEAT_ON, title: 'Leg of lamb' })
const input = (change: Partial<HeatLineInput> = {}): HeatLineInput => ({
  zone: ZONE,
  place: PLACE,
  title: 'First slice about 20:33.',
  cooks: [cook()],
  shoot: lambShoot(),
  layout: lambLayout(),
  minimum: { at: celsius(63), words: '63 °C, then 3 minutes: the food-safety authority’s minimum for whole cuts' },
  width: 1232,
  units: 'metric',
  lanes: true,
  standing: false,
  ...change,
})
const texts = (drawing: Drawing) => drawing.marks.filter((mark): mark is TextMark => mark.kind === 'text')
const words = (drawing: Drawing) => texts(drawing).map((mark) => mark.text)

/** Pairs of labels that lie over each other, and labels that leave the picture. */
function faults(drawing: Drawing): string[] {
  const all = texts(drawing)
  const pairs = all.flatMap((a, i) =>
    all.slice(i + 1).flatMap((b) => (overlap(textBox(a), textBox(b)) ? [`"${a.text}" over "${b.text}"`] : [])),
  )
  const outside = all.filter((mark) => {
    const box = textBox(mark)
    return box.left < -0.5 || box.right > drawing.width + 0.5 || box.top < -0.5 || box.bottom > drawing.height + 0.5
  })
  return [...pairs, ...outside.map((mark) => `"${mark.text}" outside`)]
}

const SHAPES: readonly (readonly [string, Partial<HeatLineInput>])[] = [
  ['1232 px with lanes', {}],
  ['1000 px with lanes', { width: 1000 }],
  ['952 px without lanes', { width: 952, lanes: false }],
  ['760 px', { width: 760, lanes: false }],
  ['700 px', { width: 700, lanes: false }],
  ['706 px on the call sheet', { width: 706, lanes: false, low: 'compact' }],
  ['362 px standing, for a phone of 390 px', { width: 362, lanes: false, standing: true }],
]
describe('heat line: no label lies over another, none leaves the picture', () => {
  for (const [name, shape] of SHAPES)
    for (const units of ['metric', 'us'] satisfies UnitSystem[])
      test(`${name}, ${units}`, () => {
        expect(faults(drawHeatLine(input({ ...shape, units })))).toEqual([])
      })
  test.each(SHAPES)('%s, a cook that fails in most members and one quick and narrow', (_, shape) => {
    expect(faults(drawHeatLine(input({ ...shape, cooks: [cook({ fails: 0.61 })] })))).toEqual([])
    expect(faults(drawHeatLine(input({ ...shape, cooks: [cook({ pullMin: 50, widthMin: 12 })] })))).toEqual([])
    expect(faults(drawHeatLine(input({ ...shape, cooks: [cook({ pullMin: 420, widthMin: 200 })] })))).toEqual([])
  })
  test('with a headline that finds no free corner', () => {
    const say = {
      main: 'First slice about 20:33, in golden light.',
      why: ['Light the fire at 16:07.', 'Meat on at 17:12.'],
    }
    expect(faults(drawHeatLine(input({ say })))).toEqual([])
  })
})

describe('heat line: says', () => {
  test.each([false, true])('all eleven moments with their likely times, standing %s', (standing) => {
    const drawing = drawHeatLine(input({ standing, width: standing ? 362 : 1232 }))
    for (const name of [
      'fire lit',
      'cooker steady',
      'meat on',
      'turn',
      'probe in',
      'pull temperature',
      'vents open',
      'sear',
      'off the heat',
      'carryover peak',
      'first slice',
    ])
      expect(words(drawing)).toContain(name)
    expect(words(drawing)).toEqual(expect.arrayContaining(['16:07', '19:45', '20:33']))
  })
  test('windows beside the names from 760 px on, not on the call sheet', () => {
    expect(words(drawHeatLine(input({ width: 760 })))).toContain('19:13 to 20:17')
    expect(words(drawHeatLine(input({ width: 759 })))).not.toContain('19:13 to 20:17')
    expect(words(drawHeatLine(input({ low: 'compact' })))).not.toContain('19:13 to 20:17')
  })
  test('a moment that does not come in most cooks by name and share, without a pole', () => {
    const drawing = drawHeatLine(input({ cooks: [cook({ fails: 0.61 })] }))
    expect(words(drawing)).toContain('sear: never in 61 % of cooks')
    expect(words(drawing)).not.toContain('first slice')
  })
  test('a late end that lies beyond every time', () => {
    const drawing = drawHeatLine(input({ cooks: [cook({ fails: 0.25 })] }))
    expect(words(drawing)).toContain('from 19:22; never in 25 % of cooks')
  })
  test('golden hour, sunset and dark with their times', () => {
    const said = words(drawHeatLine(input()))
    expect(said).toEqual(expect.arrayContaining(['golden hour', '20:26', 'sunset', '21:18', 'dark', '22:03']))
  })
  test('targets and the held temperature in the person’s units', () => {
    expect(words(drawHeatLine(input()))).toEqual(
      expect.arrayContaining(['46 °C pull', '52 °C off the heat', 'held at 150 °C']),
    )
    expect(words(drawHeatLine(input({ units: 'us' })))).toEqual(
      expect.arrayContaining(['115 °F pull', 'held at 302 °F']),
    )
  })
  test('an oven is switched on, not lit', () => {
    const oven = { ...COOK, cooker: { kind: 'oven' as const } }
    const drawing = drawHeatLine(input({ cooks: [{ ...cook(), forecast: syntheticForecast({}, oven) }] }))
    expect(words(drawing)).toEqual(expect.arrayContaining(['oven on', 'meat in']))
  })
  test('shots by number in their camera’s lane, free ones by name, the meal and who stands where', () => {
    const said = words(drawHeatLine(input()))
    expect(said).toEqual(
      expect.arrayContaining(['camera A', 'camera B, sound', 'presenter', 'stylist', 'meal', 'lid open']),
    )
    expect(said.filter((w) => w === '5')).toHaveLength(2)
    expect(said).toContain('Mint sauce')
    expect(said).not.toContain('Meat on the grate')
  })
  test('a second roast as one line', () => {
    const twin = { ...cook(), meatOn: fromMeatOn(-150), title: 'Twin in the oven' }
    const drawing = drawHeatLine(input({ cooks: [cook(), twin] }))
    expect(words(drawing)).toContain('Twin in the oven')
    expect(drawing.tables.map((t) => t.caption)).toContain('Moments of Twin in the oven')
  })
  test('the same figures as a table', () => {
    const [moments, curve] = drawHeatLine(input()).tables
    expect(moments?.rows).toContainEqual(['pull temperature', '19:45', '19:13', '20:17', '100 % of cooks'])
    expect(curve?.rows[0]).toEqual(['17:12', '4 °C', '4 °C', '4 °C', '150 °C'])
  })
})

describe('heat line: is drawn as values', () => {
  test('it survives JSON, and the same input gives the same picture', () => {
    const drawing = drawHeatLine(input())
    expect(JSON.parse(JSON.stringify(drawing))).toEqual(drawing)
    expect(drawHeatLine(input())).toEqual(drawing)
  })
  test('every number in it is finite', () => {
    const flat = JSON.stringify(drawHeatLine(input({ cooks: [cook({ fails: 0.61 })] })).marks)
    expect(flat).not.toMatch(/null|NaN|Infinity/)
  })
  test('a shoot laid out over midnight and one in polar night are drawn', () => {
    const svalbard = { lat: 78.2, lon: 15.6 }
    expect(faults(drawHeatLine(input({ place: svalbard, layout: undefined, shoot: undefined, lanes: false })))).toEqual(
      [],
    )
    const late = { ...cook(), meatOn: fromMeatOn(360) }
    expect(faults(drawHeatLine(input({ cooks: [late], layout: undefined, lanes: false })))).toEqual([])
  })
})

test('text width: a tabular digit of the condensed bold face is 0.526 em', () => {
  expect(textWidth('5', { face: 'condensed', weight: 700, size: 1000 })).toBe(526)
  expect(textWidth('18:30', { face: 'condensed', weight: 700, size: 10 })).toBeCloseTo(4 * 5.26 + 2, 0)
})
