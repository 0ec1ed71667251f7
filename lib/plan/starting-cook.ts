import type { CookerKind } from '../model/cook'
import { COOKERS } from '../model/cooker'
import { wordsFor } from '../model/doneness'
import { isPoultry } from '../model/dwell-table'
import { celsius, formatTemp, type UnitSystem } from '../units'
import { type DoneChoice, type DoneCut, doneChoices, type HowDone, usualDone } from './how-done'

/** What a cook is asked before anything else. */
export interface CookAnswers {
  readonly cut: DoneCut
  readonly cooker: CookerKind
  readonly done: HowDone
}
export type StageDocument = {
  readonly do: string
  readonly probe?: { readonly at: unknown; readonly lead?: unknown }
  readonly [key: string]: unknown
}

/** All figures here are common practice, no source, unless marked. A forecast says what becomes of them. */
const HEAT_C = { tender: 120, bird: 165, other: 150 }
const SEAR_C = 320
/** A thinner cut is done through before a cooker has climbed to its sear. [estimate] */
const SEARS_FROM_M = 0.085

/**
 * What the probe still climbs from the end of the heat to the slice, K: the middle of our own forecasts of all the cuts
 * of the catalogue, rested for 15 min. With a sear, from the pull: the thinner the more, half of it by the end of the sear. [estimate]
 */
const CLIMBS_K = 8
const SEAR_CLIMBS_KM = 1.35
const BY_OFF_HEAT = 0.45

/** The stages that the answers come to, as a shoot file writes them. */
export function startingStages(answers: CookAnswers, units: UnitSystem = 'metric'): readonly StageDocument[] {
  const { cooker } = answers
  const choice = choiceOf(answers)
  const heat = heatOf(answers, choice)
  const temp = (c: number) => formatTemp(celsius(c), units)
  const { pullC, offC } = aimsOf(answers, choice)
  const turns = turned(answers) && !COOKERS[cooker].indoors
  return [
    { do: 'preheat', at: temp(heat) },
    {
      do: 'roast',
      at: temp(heat),
      until: { core: temp(pullC) },
      ...(turns ? { turn: { at: 'half' } } : {}),
      probe: { at: turns ? 'turn' : 'start', lead: '250 °C' },
    },
    ...(offC === null ? [] : [{ do: 'sear', at: temp(SEAR_C), until: { core: temp(offC) }, max: '25 min' }]),
    { do: 'rest', ...restOf(answers) },
  ]
}

const choiceOf = ({ cut, done }: CookAnswers): DoneChoice => {
  const choices = doneChoices(cut)
  return (choices.find(({ id }) => id === done) ?? choices.find(({ id }) => id === usualDone(cut))) as DoneChoice
}
/** A short roast of red meat or pork: a bird, a fish and what falls apart are neither turned nor seared. */
const turned = ({ cut, done }: CookAnswers) => wordsFor(cut.animal).length > 0 && done !== 'tender'

/** When it is pulled, and when it leaves the sear if it has one. A minimum is there before it leaves the heat, rounded up. */
function aimsOf(answers: CookAnswers, { climbs, middleC }: DoneChoice): { pullC: number; offC: number | null } {
  const { cut, cooker } = answers
  const sears = turned(answers) && COOKERS[cooker].hottestC >= SEAR_C && cut.thicknessM >= SEARS_FROM_M
  const rises = sears ? SEAR_CLIMBS_KM / cut.thicknessM : cooker === 'water-bath' ? 0 : CLIMBS_K
  if (!sears) return { pullC: climbs ? Math.round(middleC - rises) : up(middleC), offC: null }
  const offC = climbs ? Math.round(middleC - (1 - BY_OFF_HEAT) * rises) : up(middleC)
  return { pullC: Math.round(offC - BY_OFF_HEAT * rises), offC }
}
const up = (c: number) => Math.ceil(c - 1e-9)

function heatOf({ cut, cooker, done }: CookAnswers, { middleC }: DoneChoice): number {
  // In a bath the middle comes to the water, so the water is little warmer than what is wanted.
  if (cooker === 'water-bath') return Math.ceil(middleC) + 2
  return done === 'tender' ? HEAT_C.tender : isPoultry(cut.animal) ? HEAT_C.bird : HEAT_C.other
}
function restOf({ cut, done }: CookAnswers) {
  if (done === 'tender') return { until: { after: '30 min' }, max: '2 h', cover: 'tent' }
  if (isPoultry(cut.animal)) return { until: { after: '30 min' }, max: '45 min' }
  return cut.animal === 'salmon'
    ? { until: { after: '5 min' }, max: '15 min' }
    : { until: { after: '15 min' }, max: '40 min' }
}
