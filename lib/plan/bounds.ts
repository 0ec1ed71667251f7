import { celsius, formatMass, formatTempBoth, fromFahrenheit, kilograms } from '../units'
import type { Bounds } from './fields'

/**
 * What the model holds for. A value outside is more often a slip of the unit than a wish, so the sentences say which
 * unit would make sense of it.
 */
const MASS_KG = { min: 0.3, max: 30 }
const range = `from ${formatMass(kilograms(MASS_KG.min))} to ${formatMass(kilograms(MASS_KG.max))} (0.7 to 66 lb)`

export const ROAST_MASS: Bounds = {
  ...MASS_KG,
  sentence: (written, kg) =>
    kg <= 0
      ? `A roast cannot weigh ${written}. Write its raw weight, such as "3.2 kg" or "7 lb".`
      : `${written} is too ${kg < MASS_KG.min ? 'small' : 'large'} a roast: the forecast holds ${range}. Check the number and its unit.`,
}

export const FUEL_MASS: Bounds = {
  min: 0.05,
  max: 60,
  sentence: (written) =>
    `${written} of fuel is out of range here. Write its mass from 50 g to 60 kg (0.1 to 130 lb), such as "2 kg".`,
}

export const START_LOWEST_C = -1
/** The frozen end is refused where the mass is known (`lib/plan/roast-rules.ts`): the sentence tells how long to thaw. */
export const START_TEMP: Bounds = {
  min: -60,
  max: 30,
  sentence: (written, c) => {
    if (c < -60)
      return `${written} is colder than any freezer. Write the core's temperature, such as "4 °C" or "39 °F".`
    const meant = fromFahrenheit(Number.parseFloat(written))
    const hint =
      /c/i.test(written) && meant >= START_LOWEST_C && meant <= 30
        ? ` Did you mean ${Number.parseFloat(written)} °F?`
        : ''
    return `${written} is too warm for raw meat: it starts at 30 °C (86 °F) at most.${hint}`
  },
}

/** A cooker's temperature. Below 50 °C nothing cooks, above 500 °C no cooker of ours goes. */
export const COOKER_TEMP: Bounds = {
  min: 50,
  max: 500,
  sentence: (written, c) => {
    const n = Number.parseFloat(written)
    const hint =
      c > 500 && fromFahrenheit(n) <= 500 ? ` Did you mean ${n} °F?` : c < 50 && n >= 50 ? ` Did you mean ${n} °C?` : ''
    return `${written} is no temperature for a cooker. Write one from 50 °C to 500 °C (122 °F to 932 °F).${hint}`
  },
}

/** A core to cook to; whether the cooker and boiling water let it come so far `lib/plan/stage-rules.ts` says. */
export const CORE_TEMP: Bounds = {
  min: 30,
  max: 500,
  sentence: (written, c) =>
    c < 30
      ? `A core of ${written} is not cooked. Write one from ${formatTempBoth(celsius(30))} up.`
      : `A core of ${written} is ash. Write one such as "60 °C" or "140 °F".`,
}
/** Above this the water in meat boils and holds the temperature. */
export const HIGHEST_CORE_C = 98

const between = (min: number, max: number, rule: string): Bounds => ({
  min,
  max,
  sentence: (written) => `${written} is out of range here. ${rule}`,
})
export const STAGE_TIME = between(1, 48 * 3600, 'Write a time from 1 s to 48 h, such as "75 min".')
export const REST_TIME = between(0, 48 * 3600, 'Write a time up to 48 h, such as "15 min".')
export const SHOT_TIME = between(0, 12 * 3600, 'Write a time up to 12 h, such as "6 min".')
export const DAY_TIME = between(0, 48 * 3600, 'Write a time up to 48 h, such as "11 h".')
export const MEAT_LENGTH = between(
  0.01,
  1.5,
  'Write a measure of the meat from 1 cm to 1.5 m (0.4 in to 5 ft), such as "12 cm".',
)
export const FAT_SHARE = between(0, 0.6, 'Write the share of fat in the meat from 0 % to 60 %, such as "10 %".')
export const MOST_BONE = between(0, 0.5, 'Write the share of bone from 0 % to 50 %, such as "15 %".')
export const ALTITUDE: Bounds = {
  ...between(-430, 5000, 'Write an altitude from −430 m to 5000 m (16000 ft), such as "20 m".'),
  examples: ['20 m', '66 ft'],
}
export const AIR_TEMP = between(-40, 55, "Write the air's temperature from −40 °C to 55 °C (−40 °F to 131 °F).")
export const WIND = between(0, 40, 'Write a wind up to 40 m/s (90 mph), such as "3 m/s".')
export const HUMIDITY = between(0, 1, 'Write a humidity from 0 % to 100 %.')
export const TASK_TIME = between(60, 12 * 3600, 'Write a time from 1 min to 12 h, such as "5 min".')
export const TASK_EVERY = between(300, 24 * 3600, 'Write a time from 5 min to 24 h, such as "90 min".')
/** A certainty no ensemble of a few hundred members could tell is none. */
export const CHANCE = between(0.05, 0.99, 'Write a chance from 5 % to 99 %, such as "80 %".')
export const PROBE_LEAD = between(80, 700, 'Write what the probe\'s cable stands, such as "250 °C" or "480 °F".')
