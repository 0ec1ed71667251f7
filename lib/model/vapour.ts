/** Water and its vapour: pressure with altitude, saturation, boiling. */

/** Air pressure, Pa, at an altitude up to 11 km. [standard-atmosphere] */
export const pressureAtPa = (altitudeM: number) => 101_325 * (1 - 2.25577e-5 * altitudeM) ** 5.25588

/** Water between 1 and 100 °C: log10 of mmHg. [antoine-water] */
const A = 8.07131
const B = 1730.63
const C = 233.426
const PA_PER_MMHG = 133.322
/** The law's numbers, for a kernel with arithmetic of its own. */
export const ANTOINE = { a: A, b: B, c: C, paPerMmhg: PA_PER_MMHG } as const

export const saturationPa = (tempC: number) => PA_PER_MMHG * Math.exp(Math.LN10 * (A - B / (C + tempC)))
/** d ln(saturation) / dT, 1/K. */
export const saturationSlopePerK = (tempC: number) => (Math.LN10 * B) / ((C + tempC) * (C + tempC))
export const boilingC = (pressurePa: number) => B / (A - Math.log10(pressurePa / PA_PER_MMHG)) - C
