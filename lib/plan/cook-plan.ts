import type { CookPlan, LidOpening, Stage, Surroundings } from '../model/cook'
import { COOKERS } from '../model/cooker'
import { celsius, frac, metres, metresPerSecond, seconds } from '../units'
import type { Cook, Shoot } from './shoot'

/** Where the file is silent: a mild day outdoors near the sea. The call sheet prints them as assumed. */
export const ASSUMED: Surroundings = {
  air: celsius(15),
  wind: metresPerSecond(2),
  humidity: frac(0.65),
  altitude: metres(0),
}

export const surroundingsOf = (shoot: Shoot): Surroundings => ({
  air: shoot.weather?.air ?? ASSUMED.air,
  wind: shoot.weather?.wind ?? ASSUMED.wind,
  humidity: shoot.weather?.humidity ?? ASSUMED.humidity,
  altitude: shoot.place.altitude ?? ASSUMED.altitude,
  ...(shoot.weather?.rain === undefined ? {} : { rain: shoot.weather.rain }),
})

/** A kitchen: still, and no colder than this; on a hotter day as hot as outdoors. [estimate] */
const KITCHEN = { air: celsius(21), wind: metresPerSecond(0), humidity: frac(0.5) }
function surroundingsWhere(shoot: Shoot, indoors: boolean): Surroundings {
  const day = surroundingsOf(shoot)
  const { rain: _, ...dry } = day
  return indoors ? { ...dry, ...KITCHEN, air: celsius(Math.max(KITCHEN.air, day.air)) } : day
}
/** A roast rests where its cooker stands, unless the plan says otherwise. */
function restsIndoors(cook: Cook): boolean {
  const where = cook.stages.find((stage) => stage.do === 'rest')?.where
  return where === undefined ? COOKERS[cook.cooker.kind].indoors : where === 'indoors'
}

/** Written out what a short plan leaves unsaid, so that every moment of the chain has its stage. */
function completeStages(stages: readonly Stage[]): readonly Stage[] {
  const roast = stages.find((stage) => stage.do === 'roast')
  if (!roast) return stages
  const probed = stages.some((stage) => stage.do === 'roast' && stage.probe !== undefined)
  const full = stages.map((stage): Stage => (stage === roast && !probed ? { ...roast, probe: { at: 'start' } } : stage))
  if (!full.some((stage) => stage.do === 'preheat')) full.unshift({ do: 'preheat', at: roast.at })
  if (!full.some((stage) => stage.do === 'rest')) full.push({ do: 'rest', until: { after: seconds(0) } })
  return full
}

/**
 * All the model is told of one cook: the shoot's weather and altitude (or what is assumed), a preheat to the roast's
 * temperature where none is written, the probe in from the start, no rest where none is written.
 */
export const toCookPlan = (shoot: Shoot, cook: Cook, lidOpenings: readonly LidOpening[] = []): CookPlan => ({
  id: cook.id,
  roast: cook.roast,
  cooker: cook.cooker,
  stages: completeStages(cook.stages),
  surroundings: surroundingsWhere(shoot, COOKERS[cook.cooker.kind].indoors),
  restSurroundings: surroundingsWhere(shoot, restsIndoors(cook)),
  lidOpenings,
})
