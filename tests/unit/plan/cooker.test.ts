import { describe, expect, test } from 'vitest'
import { COOKER_KINDS } from '../../../lib/model/cook'
import { momentName, momentsOf } from '../../../lib/plan/moments'
import type { Cook } from '../../../lib/plan/shoot'
import { faults, lambWith, read } from './shoots'

const COOK = '/cooks/0'
const PREHEAT = { do: 'preheat', at: '150 °C' }
const ROAST = { do: 'roast', at: '150 °C', until: { core: '46 °C' } }
const REST = { do: 'rest', until: { after: '15 min' } }
const BARE = { '/shots': [], '/tasks': [], '/sides': [] }
const stages = (...list: unknown[]) => lambWith({ ...BARE, [`${COOK}/stages`]: list })
const cooker = (of: Record<string, unknown>, ...list: unknown[]) =>
  lambWith({ ...BARE, [`${COOK}/cooker`]: of, [`${COOK}/stages`]: list.length > 0 ? list : [PREHEAT, ROAST, REST] })
const bath = (...list: unknown[]) => cooker({ kind: 'water-bath' }, ...list)
const BATH = [
  { do: 'preheat', at: '56 °C' },
  { do: 'roast', at: '56 °C', until: { core: '54 °C' } },
]
const SEAR = { do: 'sear', at: '250 °C', until: { after: '3 min' } }
const hold = (more: Record<string, unknown>) =>
  stages(PREHEAT, ROAST, REST, { do: 'hold', until: { after: '1 h' }, ...more })

describe('parseShoot: the cooker', () => {
  test('all eight kinds are read, those with a fire with their fuel', () => {
    for (const kind of COOKER_KINDS.filter((kind) => kind !== 'water-bath'))
      expect(faults(cooker({ kind }))).toEqual([])
    expect(faults(bath(...BATH, REST))).toEqual([])
    const refuel = [{ at: '3 h', add: '1 kg' }]
    const fed = read(cooker({ kind: 'kettle-charcoal', fuel: '2.5 kg', refuel, deflector: false, sheltered: true }))
    expect(fed.cooks[0]?.cooker).toEqual({
      kind: 'kettle-charcoal',
      fuel: 2.5,
      refuel: [{ at: 10800, add: 1 }],
      deflector: false,
      sheltered: true,
    })
  })
  test.each<[string, unknown, string]>([
    [
      'fuel without a unit',
      cooker({ kind: 'pellet', fuel: 2 }),
      `${COOK}/cooker/fuel: 2 what? Write "2 kg" or "4.5 lb".`,
    ],
    [
      'fuel out of range',
      cooker({ kind: 'pellet', fuel: '5 g' }),
      `${COOK}/cooker/fuel: 5 g of fuel is out of range here. Write its mass from 50 g to 60 kg (0.1 to 130 lb), such as "2 kg".`,
    ],
    [
      'fuel of an oven',
      cooker({ kind: 'oven', fuel: '2 kg' }),
      `${COOK}/cooker/fuel: An oven burns no fuel. Take "fuel" out.`,
    ],
    [
      'fuel of a gas grill',
      cooker({ kind: 'gas-grill', fuel: '2 kg' }),
      `${COOK}/cooker/fuel: A gas grill burns gas, which is not weighed here. Take "fuel" out.`,
    ],
    [
      'refuel of nothing',
      cooker({ kind: 'offset-wood', refuel: [{ at: '1 h', add: '1 kg' }] }),
      `${COOK}/cooker/refuel: What is lit at the start is missing. Write "fuel" too, such as "2 kg", or take "refuel" out.`,
    ],
    [
      'deflector in an oven',
      cooker({ kind: 'convection-oven', deflector: true }),
      `${COOK}/cooker/deflector: A convection oven has no deflector. Take "deflector" out.`,
    ],
    [
      'sheltered oven',
      cooker({ kind: 'oven', sheltered: true }),
      `${COOK}/cooker/sheltered: An oven stands indoors, where there is no wind. Take "sheltered" out.`,
    ],
    [
      'cold wood fire',
      cooker({ kind: 'offset-wood' }, { ...PREHEAT, cold: true }, ROAST, REST),
      `${COOK}/stages/0/cold: Only an oven starts cold; over fuel just lit the meat would take up its smoke. Take "cold" out.`,
    ],
    [
      'cold gas grill',
      cooker({ kind: 'gas-grill' }, { ...PREHEAT, cold: true }, ROAST, REST),
      `${COOK}/stages/0/cold: Only an oven starts cold; this one is heated up first. Take "cold" out.`,
    ],
    [
      'sear in a bath',
      bath(...BATH, SEAR, REST),
      `${COOK}/stages/2: Nothing browns in a water bath. Write "over": "direct" for a sear in a pan or over a fire, or take the sear out.`,
    ],
    [
      'sear by a reading that tells nothing',
      bath(...BATH, { ...SEAR, until: { cooker: '200 °C' }, over: 'direct' }, REST),
      `${COOK}/stages/2/until/cooker: Over direct heat the cooker's reading tells nothing. End the sear by "after" or "core".`,
    ],
    [
      'sear over something else',
      bath(...BATH, { ...SEAR, over: 'coals' }, REST),
      `${COOK}/stages/2/over: "coals" is not a heat to sear over. Write direct.`,
    ],
    [
      'heated box',
      hold({ in: 'box', at: '65 °C' }),
      `${COOK}/stages/3/at: An insulated box has no heat of its own. Take "at" out, or write "in": "oven".`,
    ],
    [
      'hold at no temperature',
      hold({ in: 'oven' }),
      `${COOK}/stages/3/at: The temperature of the hold is missing here. Write "at": "65 °C", or "in": "box" for an insulated box.`,
    ],
    [
      'hold in an oven by the cooker',
      hold({ in: 'oven', at: '65 °C', until: { cooker: '60 °C' } }),
      `${COOK}/stages/3/until/cooker: The meat is out of the cooker by then. End the hold by "after" or "core".`,
    ],
    [
      'rest on a grate',
      stages(PREHEAT, ROAST, { ...REST, on: 'grate' }),
      `${COOK}/stages/2/on: "grate" is not something to rest it on. Write rack or board.`,
    ],
  ])('%s', (_, document, sentence) => {
    expect(faults(document)).toEqual([sentence])
  })
  test('a bath above its boiling water is refused at each field that says so', () => {
    const at = (atC: number) => bath({ do: 'preheat', at: `${atC} °C` }, { ...ROAST, at: `${atC} °C` }, REST)
    const sentence =
      'A water bath comes to 95 °C (203 °F) at most, for its water boils near 100 °C. Write a bath such as "58 °C" or "136 °F".'
    expect(faults(at(150))).toEqual([`${COOK}/stages/0/at: ${sentence}`, `${COOK}/stages/1/at: ${sentence}`])
    expect(faults(at(95))).toEqual([])
  })
  test('rest and hold are read with what they lie on, in and under', () => {
    const rest = { ...REST, on: 'board', cover: 'tent', where: 'indoors' }
    const box = { do: 'hold', in: 'box', until: { core: '60 °C' } }
    const shoot = read(stages(PREHEAT, ROAST, rest, box))
    expect(shoot.cooks[0]?.stages.slice(2)).toEqual([
      { do: 'rest', until: { after: 900 }, on: 'board', cover: 'tent', where: 'indoors' },
      { do: 'hold', in: 'box', until: { core: 60 } },
    ])
  })
})

test('only a sear that waits for a fire of charcoal or wood opens vents', () => {
  const has = (kind: string, sear: Record<string, unknown>) =>
    momentsOf(read(cooker({ kind }, PREHEAT, ROAST, { ...SEAR, ...sear }, REST)).cooks[0] as Cook).includes(
      'vents-open',
    )
  expect(has('offset-wood', {})).toBe(true)
  expect(has('kettle-charcoal', { over: 'direct' })).toBe(false)
  expect(has('gas-grill', {})).toBe(false)
})

test('what is lit, switched on and put in or on is named after its cooker', () => {
  expect(momentName('fire-lit', 'offset-wood')).toBe('fire lit')
  expect(momentName('fire-lit', 'water-bath')).toBe('bath on')
  expect(momentName('meat-on', 'water-bath')).toBe('meat in')
  expect(momentName('fire-lit', 'gas-grill')).toBe('grill on')
  expect(momentName('meat-on', 'gas-grill')).toBe('meat on')
  expect(momentName('fire-lit', 'oven')).toBe('oven on')
})
