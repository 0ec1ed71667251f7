/** How much of the red of meat has gone: first-order denaturation of myoglobin. [geileskey-1998] */
const K0_PER_S = 7.98e43 / 60
const EA_JPMOL = 290_000
const R_JPMOLK = 8.314
const ZERO_K = 273.15

/** Rate at which native myoglobin is lost, 1/s. Fitted to meat of 55 to 70 °C; above it all is gone within minutes. */
export const myoglobinLossPerS = (tempC: number) => K0_PER_S * Math.exp(-EA_JPMOL / (R_JPMOLK * (tempC + ZERO_K)))

/** Shares denatured at which the same authors call meat rare and well done. [geileskey-1998] */
export const RARE_DENATURED = 0.065
export const WELL_DENATURED = 0.93
