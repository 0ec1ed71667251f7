/** How fast heat kills Salmonella in meat, as the 6.5-log column of Appendix A has it. [fsis-appendix-a-1999] */

/** 28 min for 6.5 log at 136 °F, a tenth of that for each 10 °F more: all but one of the printed times follow. */
const REFERENCE_C = (136 - 32) / 1.8
const Z_K = 10 / 1.8
const LOG_PER_S = 6.5 / (28 * 60)
/** The table begins at 130 °F, and from 158 °F on is printed as 0 s: no credit below, none faster above. */
const FROM_C = (130 - 32) / 1.8
const TO_C = (158 - 32) / 1.8

export const lethalityPerS = (tempC: number) =>
  tempC < FROM_C ? 0 : LOG_PER_S * 10 ** ((Math.min(tempC, TO_C) - REFERENCE_C) / Z_K)
