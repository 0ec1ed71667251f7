import type { Minimum } from '../model/minimums'
import {
  celsius,
  fahrenheit,
  formatLength,
  formatMass,
  formatRise,
  formatShare,
  formatTemp,
  formatTempBoth,
  kelvins,
  kilograms,
  metres,
} from '../units'
import type { Claim, Figure } from './claim'

/** To what a time on a card is rounded: nobody can promise an hour to the minute. */
const grainMin = (min: number) => (min < 20 ? 1 : min < 300 ? 5 : 15)
export const roundMin = (s: number, grain = grainMin(s / 60)) => Math.round(s / 60 / grain) * grain
function clockless(min: number, unit = true) {
  const h = Math.floor(min / 60)
  if (h === 0) return unit ? `${min} min` : `${min}`
  return min % 60 === 0 ? `${h} h` : `${h} h ${String(min % 60).padStart(2, '0')}`
}

/** "2 h 05 to 3 h 10", "35 to 50 min", "about 2 h": as round as it is known. */
export function timeWords({ low, high }: Pick<Figure, 'low' | 'high'>): string {
  if (!Number.isFinite(high)) return `${timeWords({ low, high: low })} or more`
  // What is known to the minute is said to the minute.
  const known = high - low < 300 ? 1 : undefined
  const [from, to] = [roundMin(low, known), roundMin(high, known)]
  if (from === to) return clockless(to)
  return to < 60 ? `${from} to ${to} min` : `${clockless(from)} to ${clockless(to)}`
}
/** "2 h 40": one time, for a line or a sentence that says "about". */
export const aboutTime = (s: number) => clockless(roundMin(s))

const whole = (n: number) => Math.round(n)
const range = (low: string, high: string, unit: string) =>
  low === high ? `${high} ${unit}` : `${low} to ${high} ${unit}`
const digits = (n: number) => String(whole(n)).replace('-', '−')

/** "56 to 59 °C / 133 to 138 °F". */
export const levelWords = ({ low, high }: Pick<Figure, 'low' | 'high'>) =>
  `${range(digits(low), digits(high), '°C')} / ${range(digits(fahrenheit(celsius(low))), digits(fahrenheit(celsius(high))), '°F')}`
/** A level as set on a cooker: US figures to the 5 °F of a dial from boiling up. */
export function settingWords(level: number) {
  const f = fahrenheit(celsius(level))
  return `${formatTemp(celsius(level))} / ${level >= 100 ? `${Math.round(f / 5) * 5} °F` : formatTemp(celsius(level), 'us')}`
}
export const riseWords = ({ low, high }: Pick<Figure, 'low' | 'high'>) =>
  low < 0 && high >= 1
    ? `up to ${formatRise(kelvins(high))} / ${formatRise(kelvins(high), 'us')}`
    : whole(low) === whole(high)
      ? `${formatRise(kelvins(low))} / ${formatRise(kelvins(low), 'us')}`
      : `${digits(low)} to ${digits(high)} °C / ${digits(low * 1.8)} to ${digits(high * 1.8)} °F`
export const shareWords = ({ low, high }: Pick<Figure, 'low' | 'high'>) =>
  range(digits(low * 100), digits(high * 100), '%')
export const massWords = (kg: number) => `${formatMass(kilograms(kg))} / ${formatMass(kilograms(kg), 'us')}`
export const lengthWords = (m: number) => `${formatLength(metres(m))} / ${formatLength(metres(m), 'us')}`
const bare = (words: string) => words.replace(/ \D+$/, '')
const massRange = ({ low, high }: Pick<Figure, 'low' | 'high'>) => {
  const [a, b] = [kilograms(low), kilograms(high)]
  return `${bare(formatMass(a))} to ${formatMass(b)} / ${bare(formatMass(a, 'us'))} to ${formatMass(b, 'us')}`
}
const bandWords = ({ low, high }: Pick<Figure, 'low' | 'high'>) => range(digits(low * 1000), digits(high * 1000), 'mm')

/** A figure in the words that would stand in its claim's place. */
export function figureWords(claim: Pick<Claim, 'kind' | 'unit'>, figure: Figure): string {
  const fixed = figure.low === figure.high
  switch (claim.unit) {
    case 's':
      return timeWords(figure)
    case 'degC':
      return fixed ? settingWords(figure.likely) : levelWords(figure)
    case 'K':
      return riseWords(figure)
    case '1':
      return shareWords(figure)
    case 'kg':
      return fixed ? massWords(figure.likely) : massRange(figure)
    case 'm':
      return fixed ? lengthWords(figure.likely) : bandWords(figure)
    case 'people':
      return range(digits(Math.ceil(figure.low)), digits(Math.floor(figure.high)), '').trim()
    case 'word':
      return formatShare(figure.likely)
  }
}

/** "63 °C / 145 °F, then 3 minutes". */
export const minimumWords = ({ tempC, restMin }: Minimum) =>
  restMin > 0 ? `${formatTempBoth(celsius(tempC))}, then ${restMin} minutes` : formatTempBoth(celsius(tempC))
