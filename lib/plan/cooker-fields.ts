/** What the shoot file says of a cooker, and what is wrong with it together with the stages. */
import { COOKER_KINDS, type CookerKind } from '../model/cook'
import { COOKERS } from '../model/cooker'
import type { Problem } from '../refusals'
import { celsius, formatTemp, type Kilograms, type Seconds } from '../units'
import * as bounds from './bounds'
import { MEMORY } from './cooker-memory-fields'
import { list, quantity, record, text, word, yesNo } from './fields'
import type { Cook } from './shoot'

const fuelMass = quantity<Kilograms>('mass', bounds.FUEL_MASS)
export const COOKER = record('a cooker', {
  kind: word('a cooker', COOKER_KINDS),
  fuel: fuelMass.optional(),
  refuel: list(
    'refuels',
    record('a refuel', { at: quantity<Seconds>('duration', bounds.STAGE_TIME), add: fuelMass }),
    24,
  ).optional(),
  deflector: yesNo.optional(),
  sheltered: yesNo.optional(),
  /** What the crew calls it: under this name it is remembered. */
  name: text('the name of the cooker', 60, 1).optional(),
  /** What its logged cooks have taught; without it the forecast takes it for any of its kind. */
  memory: MEMORY.optional(),
})

type Stage = Cook['stages'][number]
const WORDS: Readonly<Record<CookerKind, string>> = {
  oven: 'An oven',
  'convection-oven': 'A convection oven',
  'ceramic-charcoal': 'A ceramic cooker',
  'kettle-charcoal': 'A kettle',
  'offset-wood': 'An offset cooker',
  pellet: 'A pellet cooker',
  'gas-grill': 'A gas grill',
  'water-bath': 'A water bath',
}

export const checkCooker = (cook: Cook, path: string): Problem[] => [
  ...unfitting(cook, `${path}/cooker`),
  ...cook.stages.flatMap((stage, i) => [
    ...coldStart(cook, stage, `${path}/stages/${i}`),
    ...tooHotABath(cook, stage, `${path}/stages/${i}`),
    ...wrongHeat(cook, stage, `${path}/stages/${i}`),
  ]),
]

/** Keys that this kind of cooker has no use for. */
function unfitting({ cooker }: Cook, pointer: string): Problem[] {
  const { fuel, indoors } = COOKERS[cooker.kind]
  const what = WORDS[cooker.kind]
  const problems: Problem[] = []
  const refuse = (key: string, sentence: string) => problems.push({ pointer: `${pointer}/${key}`, sentence })
  const unweighed = cooker.kind === 'gas-grill' ? 'burns gas, which is not weighed here' : 'burns no fuel'
  for (const key of ['fuel', 'refuel'] as const)
    if (fuel === undefined && cooker[key] !== undefined) refuse(key, `${what} ${unweighed}. Take "${key}" out.`)
  if (fuel !== undefined && cooker.refuel !== undefined && cooker.fuel === undefined)
    refuse('refuel', 'What is lit at the start is missing. Write "fuel" too, such as "2 kg", or take "refuel" out.')
  if (indoors && cooker.deflector !== undefined) refuse('deflector', `${what} has no deflector. Take "deflector" out.`)
  if (indoors && cooker.sheltered !== undefined)
    refuse('sheltered', `${what} stands indoors, where there is no wind. Take "sheltered" out.`)
  return problems
}

function coldStart({ cooker }: Cook, stage: Stage, pointer: string): Problem[] {
  if (stage.do !== 'preheat' || !stage.cold || cooker.kind === 'oven' || cooker.kind === 'convection-oven') return []
  const { vents } = COOKERS[cooker.kind]
  const why = vents ? 'over fuel just lit the meat would take up its smoke' : 'this one is heated up first'
  return [{ pointer: `${pointer}/cold`, sentence: `Only an oven starts cold; ${why}. Take "cold" out.` }]
}

function tooHotABath({ cooker }: Cook, stage: Stage, pointer: string): Problem[] {
  const inBath =
    stage.do === 'preheat' || stage.do === 'roast' || (stage.do === 'hold' && (stage.in ?? 'cooker') === 'cooker')
  if (cooker.kind !== 'water-bath' || !inBath || stage.at === undefined) return []
  const most = celsius(COOKERS['water-bath'].hottestC)
  if (stage.at <= most) return []
  return [
    {
      pointer: `${pointer}/at`,
      sentence: `A water bath comes to ${formatTemp(most)} (${formatTemp(most, 'us')}) at most, for its water boils near 100 °C. Write a bath such as "58 °C" or "136 °F".`,
    },
  ]
}

/** A sear or hold that its place does not allow. */
function wrongHeat({ cooker }: Cook, stage: Stage, pointer: string): Problem[] {
  if (stage.do === 'sear' && cooker.kind === 'water-bath' && stage.over === undefined)
    return [
      {
        pointer,
        sentence:
          'Nothing browns in a water bath. Write "over": "direct" for a sear in a pan or over a fire, or take the sear out.',
      },
    ]
  if (stage.do === 'sear' && stage.over === 'direct' && 'cooker' in stage.until)
    return [
      {
        pointer: `${pointer}/until/cooker`,
        sentence: `Over direct heat the cooker's reading tells nothing. End the sear by "after" or "core".`,
      },
    ]
  if (stage.do !== 'hold') return []
  const place = stage.in ?? 'cooker'
  if (place === 'box' && stage.at !== undefined)
    return [
      {
        pointer: `${pointer}/at`,
        sentence: 'An insulated box has no heat of its own. Take "at" out, or write "in": "oven".',
      },
    ]
  if (place !== 'box' && stage.at === undefined)
    return [
      {
        pointer: `${pointer}/at`,
        sentence: `The temperature of the hold is missing here. Write "at": "65 °C", or "in": "box" for an insulated box.`,
      },
    ]
  if (place !== 'cooker' && 'cooker' in stage.until)
    return [
      {
        pointer: `${pointer}/until/cooker`,
        sentence: 'The meat is out of the cooker by then. End the hold by "after" or "core".',
      },
    ]
  return []
}
