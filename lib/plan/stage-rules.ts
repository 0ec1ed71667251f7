import type { Problem } from '../refusals'
import { type Celsius, formatDuration, formatTemp, fromFahrenheit } from '../units'
import { HIGHEST_CORE_C } from './bounds'
import { checkCooker } from './cooker-fields'
import type { Cook } from './shoot'

type Stage = Cook['stages'][number]
type Sited = { readonly stage: Stage; readonly pointer: string }

/** What is wrong with the order of the stages and between them. */
export function checkStages(cook: Cook, path: string): Problem[] {
  const sited = cook.stages.map((stage, i): Sited => ({ stage, pointer: `${path}/stages/${i}` }))
  const disorder = checkOrder(sited, `${path}/stages`)
  const tooHigh = sited.flatMap(({ stage, pointer }) => targetTooHigh(stage, pointer))
  return [
    ...disorder,
    ...tooHigh,
    ...checkCooker(cook, path),
    ...sited.flatMap(({ stage, pointer }) => capBelowLength(stage, pointer)),
    // Out of order or out of reach, cores cannot be compared with each other.
    ...(disorder.length + tooHigh.length > 0 ? [] : checkCores(cook, sited)),
    ...checkProbe(sited),
  ]
}

const RIGHT_ORDER = 'The order is preheat, roast, sear, then rest and hold.'
const isAfterHeat = (stage: Stage) => stage.do === 'rest' || stage.do === 'hold'

function checkOrder(sited: readonly Sited[], list: string): Problem[] {
  const problems: Problem[] = []
  const at = (what: Stage['do']) => sited.findIndex(({ stage }) => stage.do === what)
  const refuse = (pointer: string, sentence: string) => problems.push({ pointer, sentence })
  if (at('roast') < 0)
    refuse(list, 'There is no roast stage. Write { "do": "roast", "at": "150 °C", "until": { "core": "60 °C" } }.')
  sited.forEach(({ stage, pointer }, i) => {
    const before = sited.slice(0, i).map((each) => each.stage)
    const again = before.some((each) => each.do === stage.do)
    if (stage.do === 'preheat' && again) refuse(pointer, 'There are two preheats; the fire is lit once. Take one out.')
    else if (stage.do === 'preheat' && i > 0)
      refuse(pointer, `The preheat stands after the ${before.at(-1)?.do}. Put it first. ${RIGHT_ORDER}`)
    if (stage.do === 'sear' && again) refuse(pointer, 'There are two sears; one is planned and called. Take one out.')
    else if (stage.do === 'sear' && i < at('roast'))
      refuse(pointer, `The sear stands before the roast. Put it after. ${RIGHT_ORDER}`)
    if (stage.do === 'roast' && at('sear') >= 0 && at('sear') < i && before.some((each) => each.do === 'roast'))
      refuse(pointer, `A roast stands after the sear; the sear is the last heat. ${RIGHT_ORDER}`)
    if (stage.do === 'rest' && again) refuse(pointer, 'There are two rests; the first slice ends one. Take one out.')
    if ((stage.do === 'roast' || stage.do === 'sear') && before.some(isAfterHeat))
      refuse(
        pointer,
        `The ${before.find(isAfterHeat)?.do} stands before the ${stage.do}; it comes after the last heat. ${RIGHT_ORDER}`,
      )
  })
  return problems
}

/** The core that was meant where °C stands for °F: 140 °C is 60 °C (140 °F). */
function meantCore(core: Celsius): string {
  const c = fromFahrenheit(core)
  return c >= 40 && c <= 96
    ? ` Did you mean ${formatTemp(c)} (${formatTemp(c, 'us')})?`
    : ' Write a core that it can reach, such as 60 °C (140 °F).'
}

function targetTooHigh(stage: Stage, pointer: string): Problem[] {
  if (stage.do === 'preheat' || !('core' in stage.until)) return []
  const { core } = stage.until
  // after the heat the meat may come down to its core
  const heats = stage.do === 'roast' || stage.do === 'sear'
  const cooker = heats && core >= stage.at ? formatTemp(stage.at) : undefined
  if (cooker === undefined && core <= HIGHEST_CORE_C) return []
  const why = cooker
    ? `The cooker stands at ${cooker}; the middle cannot pass it to reach ${formatTemp(core)}.`
    : `The middle cannot reach ${formatTemp(core)}: its water boils near 100 °C (212 °F).`
  return [{ pointer: `${pointer}/until/core`, sentence: `${why}${meantCore(core)}` }]
}

function capBelowLength(stage: Stage, pointer: string): Problem[] {
  if (stage.do === 'preheat' || stage.max === undefined || !('after' in stage.until)) return []
  if (stage.max >= stage.until.after) return []
  return [
    {
      pointer: `${pointer}/max`,
      sentence: `The ${stage.do} lasts ${formatDuration(stage.until.after)} and may last ${formatDuration(stage.max)} at most. Write a "max" that is no shorter.`,
    },
  ]
}

/** A core below one already reached would end its stage as it begins. */
function checkCores(cook: Cook, sited: readonly Sited[]): Problem[] {
  const problems: Problem[] = []
  let reached = cook.roast.start
  let by = 'the meat starts'
  let hottest: Celsius | undefined
  for (const { stage, pointer } of sited) {
    if (stage.do === 'sear' && hottest !== undefined && stage.at < hottest)
      problems.push({
        pointer: `${pointer}/at`,
        sentence: `The sear at ${formatTemp(stage.at)} is cooler than the roast at ${formatTemp(hottest)}. Write a hotter sear.`,
      })
    if (stage.do === 'roast') hottest = stage.at
    if ((stage.do !== 'roast' && stage.do !== 'sear') || !('core' in stage.until)) continue
    const tooLow = stage.do === 'roast' ? stage.until.core <= reached : stage.until.core < reached
    if (tooLow)
      problems.push({
        pointer: `${pointer}/until/core`,
        sentence: `The ${stage.do} ends at ${formatTemp(stage.until.core)}, and ${by} at ${formatTemp(reached)}. Write a core above that.`,
      })
    else reached = stage.until.core
    by = `the ${stage.do} before it ends`
  }
  return problems
}

function checkProbe(sited: readonly Sited[]): Problem[] {
  const problems: Problem[] = []
  const turned = sited.filter(({ stage }) => stage.do === 'roast' && stage.turn !== undefined)
  const probed = sited.filter(({ stage }) => stage.do === 'roast' && stage.probe !== undefined)
  for (const { pointer } of turned.slice(1))
    problems.push({
      pointer: `${pointer}/turn`,
      sentence: 'The meat is turned in an earlier stage already; one turn is planned and called. Take one out.',
    })
  for (const { pointer } of probed.slice(1))
    problems.push({
      pointer: `${pointer}/probe`,
      sentence: 'The probe goes in in an earlier stage already. Take one of the two out.',
    })
  for (const { stage, pointer } of probed) {
    if (stage.do !== 'roast' || !stage.probe) continue
    if (stage.probe.at === 'turn' && turned.length === 0)
      problems.push({
        pointer: `${pointer}/probe/at`,
        sentence: 'The probe goes in at the turn, and no turn is planned. Add "turn" to the roast, or write "start".',
      })
    if (stage.probe.lead !== undefined && stage.probe.lead < stage.at)
      problems.push({
        pointer: `${pointer}/probe/lead`,
        sentence: `The probe's cable stands ${formatTemp(stage.probe.lead)} and the roast is at ${formatTemp(stage.at)}. Use a cable that stands more.`,
      })
  }
  return problems
}
