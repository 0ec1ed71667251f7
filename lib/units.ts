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
/** US customary cup, a sixteenth of the gallon of 231 cubic inches [nist-hb44]. */
const M3_PER_CUP = (231 * M_PER_INCH ** 3) / 16

export type Dimension = 'temperature' | 'mass' | 'length' | 'volume' | 'duration' | 'speed' | 'share'
type Scale = { readonly suffixes: readonly string[]; readonly toSi: (n: number) => number }
const linear = (factor: number, ...suffixes: string[]): Scale => ({ suffixes, toSi: (n) => n * factor })
const SCALES: Record<Dimension, readonly Scale[]> = {
  temperature: [linear(1, '°C', 'C', 'degC'), { suffixes: ['°F', 'F', 'degF'], toSi: (f) => fromFahrenheit(f) }],
  mass: [
    linear(1, 'kg', 'kilo', 'kilos'),
    linear(KG_PER_LB, 'lb', 'lbs', 'pound', 'pounds'),
    linear(KG_PER_LB / 16, 'oz', 'ounce', 'ounces'),
    linear(0.001, 'g', 'gram', 'grams'),
  ],
  length: [
    linear(1, 'm'),
    linear(12 * M_PER_INCH, 'ft', 'foot', 'feet'),
    linear(M_PER_INCH, 'in', 'inch', 'inches'),
    linear(0.01, 'cm'),
    linear(0.001, 'mm'),
  ],
  volume: [
    linear(1e-3, 'l', 'litre', 'litres', 'liter', 'liters'),
    linear(M3_PER_CUP, 'cup', 'cups'),
    linear(1e-4, 'dl'),
    linear(M3_PER_CUP / 8, 'floz'),
    linear(M3_PER_CUP / 16, 'tbsp', 'tbsps', 'tablespoon', 'tablespoons'),
    linear(1e-5, 'cl'),
    linear(M3_PER_CUP / 48, 'tsp', 'tsps', 'teaspoon', 'teaspoons'),
    linear(1e-6, 'ml', 'millilitre', 'millilitres', 'milliliter', 'milliliters'),
  ],
  duration: [
    linear(3600, 'h', 'hr', 'hrs', 'hour', 'hours'),
    linear(60, 'min', 'mins', 'minute', 'minutes'),
    linear(1, 's', 'sec', 'second', 'seconds'),
  ],
  speed: [linear(1, 'm/s'), linear(1 / 3.6, 'km/h'), linear(0.44704, 'mph')],
  share: [linear(0.01, '%')],
}
/** Dimensions that people write in two steps, the larger unit first: "2 h 30 min", "1 lb 8 oz". */
const COMPOUND: readonly Dimension[] = ['duration', 'mass', 'length', 'volume']
const EXAMPLE: Record<Dimension, readonly [string, string]> = {
  temperature: ['150 °C', '300 °F'],
  mass: ['3.2 kg', '7 lb'],
  length: ['12 cm', '4.7 in'],
  volume: ['30 ml', '2 tbsp'],
  duration: ['75 min', '2 h 30 min'],
  speed: ['3 m/s', '7 mph'],
  share: ['65 %', '40 %'],
}

export type Reading = { ok: true; si: number } | { ok: false; sentence: string }
const no = (sentence: string): Reading => ({ ok: false, sentence })

/** A number as people write it, with a comma or a point for the decimals; then its unit, if any. */
const PART = /([-−+]?\d+(?:[.,]\d+)?)\s*([^\d\s.,+−-]*)\s*/gu
const LARGEST = 1e9

/**
 * Reads a quantity as a person writes it, to SI (°C, kg, m, s, m/s, 0-1).
 * A missing or foreign unit is refused with a sentence that shows two right ways.
 */
export function readQuantity(written: unknown, dimension: Dimension): Reading {
  const right = `Write "${EXAMPLE[dimension].join('" or "')}".`
  if (typeof written === 'number' && Number.isFinite(written)) return no(withoutUnit(String(written), dimension))
  if (written === undefined || written === null || (typeof written === 'string' && written.trim() === ''))
    return no(`A ${dimension} is missing here. ${right}`)
  if (typeof written !== 'string') return no(`This is not a ${dimension}. ${right}`)
  const text = tidy(written)
  const shown = `"${text.length > 40 ? `${text.slice(0, 40)}…` : text}"`
  const parts = [...text.matchAll(PART)]
  if (parts.length === 0 || /\de[-+]?\d/i.test(text) || parts.map((part) => part[0]).join('') !== text)
    return no(`${shown} is not a ${dimension}. ${right}`)
  const two = ambiguous(text, shown)
  if (two) return no(two)
  if (parts.length > 1 && (parts[0]?.[2] === '' || !COMPOUND.includes(dimension)))
    return no(`${shown} holds more than one number. ${right}`)
  return summed(parts, dimension, { text, shown, right })
}

type Words = { readonly text: string; readonly shown: string; readonly right: string }
function summed(parts: readonly RegExpMatchArray[], dimension: Dimension, { text, shown, right }: Words): Reading {
  let si = 0
  let last = -1
  for (const [i, [, digits = '', suffix = '']] of parts.entries()) {
    if (suffix === '') return no(withoutUnit(parts.length > 1 ? digits : text, dimension))
    const rank = SCALES[dimension].findIndex((s) => s.suffixes.some((x) => x.toLowerCase() === suffix.toLowerCase()))
    const scale = SCALES[dimension][rank]
    if (!scale) return no(foreignUnit(suffix, dimension, right))
    const disordered = rank <= last || (i > 0 && /^[-−+]/.test(digits))
    if (disordered) return no(`${shown} holds two numbers that do not add up. ${right}`)
    last = rank
    si += scale.toSi(toNumber(digits))
  }
  return Math.abs(si) <= LARGEST ? { ok: true, si } : no(`${shown} is too large a ${dimension}. ${right}`)
}

const toNumber = (digits: string) => Number(digits.replace(',', '.').replace('−', '-'))

/** Signs that look like the degree sign, gaps after it, and the narrow spaces of typeset text. */
const tidy = (written: string) =>
  written
    .trim()
    .replace(/[º˚]/g, '°')
    .replace(/°\s+(?=[cf])/i, '°')
    .replace(/\s+/g, ' ')

/** "1,500 g" is 1.5 g or 1500 g, by the country. */
function ambiguous(text: string, shown: string): string | null {
  const comma = /\d+,\d{3}(?!\d)/.exec(text)?.[0]
  if (comma)
    return `${shown} can be read two ways. Write "${comma.replace(',', '')}" or "${comma.replace(',', '.')}" with the unit.`
  const gap = /\d{1,3}(?: \d{3})+(?!\d)/.exec(text)?.[0]
  return gap ? `${shown} has a gap in its number. Write "${text.replace(gap, gap.replaceAll(' ', ''))}".` : null
}

function withoutUnit(number: string, dimension: Dimension): string {
  const n = toNumber(number)
  const [a, b] = n >= 0.1 && n <= 10_000 ? echoed(n, dimension) : EXAMPLE[dimension]
  return `${number} what? Write "${a}" or "${b}".`
}
/** The same number with each unit it may have been meant in. */
function echoed(n: number, dimension: Dimension): readonly [string, string] {
  switch (dimension) {
    case 'temperature':
      return [`${n} °C`, `${n} °F`]
    case 'mass':
      return [`${n} kg`, `${Math.max(0.5, Math.round((2 * n) / KG_PER_LB) / 2)} lb`]
    case 'length':
      return [`${n} cm`, `${Number(((n * 0.01) / M_PER_INCH).toPrecision(2))} in`]
    case 'volume':
      return [`${n} ml`, `${n} tbsp`]
    case 'duration':
      return [`${n} min`, n <= 12 ? `${n} h` : EXAMPLE.duration[1]]
    case 'speed':
      return [`${n} m/s`, `${Number((n / 0.44704).toPrecision(2))} mph`]
    default:
      return n <= 1 ? [`${Number((n * 100).toPrecision(2))} %`, `${n} %`] : [`${n} %`, EXAMPLE.share[1]]
  }
}

function foreignUnit(suffix: string, dimension: Dimension, right: string): string {
  const owner = (Object.keys(SCALES) as Dimension[]).find((each) =>
    SCALES[each].some((scale) => scale.suffixes.some((x) => x.toLowerCase() === suffix.toLowerCase())),
  )
  const unit = `"${suffix.slice(0, 20)}"`
  return owner
    ? `${unit} is a unit of ${owner}; here stands a ${dimension}. ${right}`
    : `${unit} is no unit of ${dimension}. ${right}`
}

/** What the person chose; remembered by the shell. */
export type UnitSystem = 'metric' | 'us'

/** With the true minus sign, and no minus before a zero. */
const fixed = (n: number, digits: number) =>
  n
    .toFixed(digits)
    .replace(/^-(?=[0.]*$)/, '')
    .replace('-', '−')

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
  if (Math.round(s) < 60) return `${Math.round(s) === 0 ? '' : sign}${Math.round(s)} s`
  const min = Math.round(s / 60)
  if (min < 60) return `${sign}${min} min`
  const h = Math.floor(min / 60)
  return min % 60 === 0 ? `${sign}${h} h` : `${sign}${h} h ${String(min % 60).padStart(2, '0')} min`
}
export const formatShare = (share: number) => `${Math.round(share * 100)} %`
