/**
 * The only unit conversions in the repository: branded scalars, reading and printing of quantities.
 * SI inside (temperatures in °C), the person's units at the edge.
 */
declare const unit: unique symbol
type Unit<Name extends string> = number & { readonly [unit]: Name }

/** A temperature level, °C. */
export type Celsius = Unit<'degC'>
/** A temperature difference, K. */
export type Kelvins = Unit<'K difference'>
export type Kilograms = Unit<'kg'>
export type Metres = Unit<'m'>
/** Elapsed time, s. The zero is named where it is used (mostly meat-on). */
export type Seconds = Unit<'s'>
/** A point in time, milliseconds since 1970-01-01T00:00Z. */
export type Instant = Unit<'ms since epoch'>
export type MetresPerSecond = Unit<'m/s'>
/** A share between 0 and 1, never a percentage. */
export type Frac = Unit<'fraction'>

export const celsius = (n: number) => n as Celsius
export const kelvins = (n: number) => n as Kelvins
export const kilograms = (n: number) => n as Kilograms
export const metres = (n: number) => n as Metres
export const seconds = (n: number) => n as Seconds
export const minutes = (n: number) => (n * 60) as Seconds
export const instant = (n: number) => n as Instant
export const metresPerSecond = (n: number) => n as MetresPerSecond
export const frac = (n: number) => n as Frac

export const warmer = (level: Celsius, rise: Kelvins) => celsius(level + rise)
export const later = (at: Instant, by: Seconds) => instant(at + by * 1000)
export const fahrenheit = (level: Celsius) => level * 1.8 + 32
export const fromFahrenheit = (f: number) => celsius((f - 32) / 1.8)

/** International avoirdupois pound and inch (1959 agreement), exact. */
const KG_PER_LB = 0.45359237
const M_PER_INCH = 0.0254

export type Dimension = 'temperature' | 'mass' | 'length' | 'duration' | 'speed' | 'share'
type Scale = { readonly suffixes: readonly string[]; readonly toSi: (n: number) => number }
const linear = (factor: number, ...suffixes: string[]): Scale => ({ suffixes, toSi: (n) => n * factor })
const SCALES: Record<Dimension, readonly Scale[]> = {
  temperature: [linear(1, '°C', 'C', 'degC'), { suffixes: ['°F', 'F', 'degF'], toSi: (f) => fromFahrenheit(f) }],
  mass: [linear(1, 'kg'), linear(0.001, 'g'), linear(KG_PER_LB, 'lb', 'lbs'), linear(KG_PER_LB / 16, 'oz')],
  length: [
    linear(0.01, 'cm'),
    linear(0.001, 'mm'),
    linear(1, 'm'),
    linear(M_PER_INCH, 'in'),
    linear(12 * M_PER_INCH, 'ft'),
  ],
  duration: [linear(60, 'min'), linear(3600, 'h'), linear(1, 's')],
  speed: [linear(1, 'm/s'), linear(1 / 3.6, 'km/h'), linear(0.44704, 'mph')],
  share: [linear(0.01, '%')],
}
const EXAMPLE: Record<Dimension, readonly [string, string]> = {
  temperature: ['150 °C', '300 °F'],
  mass: ['3.2 kg', '7 lb'],
  length: ['12 cm', '4.7 in'],
  duration: ['75 min', '2 h 30 min'],
  speed: ['3 m/s', '7 mph'],
  share: ['65 %', '40 %'],
}

export type Reading = { ok: true; si: number } | { ok: false; sentence: string }

/**
 * Reads a quantity as a person writes it, to SI (°C, kg, m, s, m/s, 0-1).
 * A missing or foreign unit is refused with a sentence that shows two right ways.
 */
export function readQuantity(text: unknown, dimension: Dimension): Reading {
  const [a, b] = EXAMPLE[dimension]
  if (typeof text === 'number') return { ok: false, sentence: `${text} what? Write "${a}" or "${b}".` }
  if (typeof text !== 'string' || text.trim() === '')
    return { ok: false, sentence: `A ${dimension} is missing here. Write "${a}" or "${b}".` }
  const parts = [...text.trim().matchAll(/([-−+]?\d+(?:[.,]\d+)?)\s*([^\d\s.,+−-]*)\s*/gu)]
  const whole = parts.map((p) => p[0]).join('')
  if (parts.length === 0 || whole.length !== text.trim().length)
    return { ok: false, sentence: `"${text}" is not a ${dimension}. Write "${a}" or "${b}".` }
  if (parts.length > 1 && dimension !== 'duration' && dimension !== 'mass' && dimension !== 'length')
    return { ok: false, sentence: `"${text}" holds more than one number. Write "${a}" or "${b}".` }
  let si = 0
  for (const [, digits, suffix] of parts) {
    const n = Number((digits ?? '').replace(',', '.').replace('−', '-'))
    if (!suffix) return { ok: false, sentence: `${text.trim()} what? Write "${a}" or "${b}".` }
    const scale = SCALES[dimension].find((s) => s.suffixes.some((x) => x.toLowerCase() === suffix.toLowerCase()))
    if (!scale) return { ok: false, sentence: `"${suffix}" is no unit of ${dimension}. Write "${a}" or "${b}".` }
    si += scale.toSi(n)
  }
  return { ok: true, si }
}

/** What the person chose; remembered by the shell. */
export type UnitSystem = 'metric' | 'us'

const fixed = (n: number, digits: number) => n.toFixed(digits).replace('-', '−')

/** "150 °C" or "302 °F". */
export const formatTemp = (level: Celsius, units: UnitSystem = 'metric', digits = 0) =>
  units === 'us' ? `${fixed(fahrenheit(level), digits)} °F` : `${fixed(level, digits)} °C`
/** "150 °C / 302 °F", for print that must serve both. */
export const formatTempBoth = (level: Celsius) => `${formatTemp(level)} / ${formatTemp(level, 'us')}`
/** A difference: "5 °C" or "9 °F" (a rise, so no offset). */
export const formatRise = (rise: Kelvins, units: UnitSystem = 'metric') =>
  units === 'us' ? `${fixed(rise * 1.8, 0)} °F` : `${fixed(rise, 0)} °C`
export function formatMass(mass: Kilograms, units: UnitSystem = 'metric') {
  if (units === 'us') {
    const lb = mass / KG_PER_LB
    return `${Number(lb.toFixed(lb < 10 ? 1 : 0))} lb`
  }
  return mass < 1 ? `${Math.round(mass * 1000)} g` : `${Number(mass.toFixed(1))} kg`
}
export const formatLength = (length: Metres, units: UnitSystem = 'metric') =>
  units === 'us'
    ? `${Number((length / M_PER_INCH).toFixed(1))} in`
    : length < 0.03
      ? `${Math.round(length * 1000)} mm`
      : `${Number((length * 100).toFixed(1))} cm`
/** "2 h 05 min", "35 min", "40 s": rounded to the minute from one minute on. */
export function formatDuration(time: Seconds) {
  const sign = time < 0 ? '−' : ''
  const s = Math.abs(time)
  if (s < 60) return `${sign}${Math.round(s)} s`
  const min = Math.round(s / 60)
  if (min < 60) return `${sign}${min} min`
  const h = Math.floor(min / 60)
  return min % 60 === 0 ? `${sign}${h} h` : `${sign}${h} h ${String(min % 60).padStart(2, '0')} min`
}
export const formatShare = (share: number) => `${Math.round(share * 100)} %`
