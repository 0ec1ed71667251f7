import { READING_LIMITS } from '@/lib/log/entry-words'
import { type Celsius, celsius, formatTemp, fromFahrenheit, type UnitSystem } from '@/lib/units'
import { noProbeReads } from '../words/sheets'

/** What the keypad has so far: digits with at most one point, and a sign. */
export interface Typed {
  readonly digits: string
  readonly minus: boolean
}
export const NOTHING: Typed = { digits: '', minus: false }
const MOST_DIGITS = 5

export function press(typed: Typed, key: string): Typed {
  if (key === 'wipe') return NOTHING
  if (key === 'sign') return { ...typed, minus: !typed.minus }
  if (key === 'back') return { ...typed, digits: typed.digits.slice(0, -1) }
  if (key === '.' && typed.digits.includes('.')) return typed
  if (typed.digits.length >= MOST_DIGITS) return typed
  const digits = typed.digits === '0' && key !== '.' ? key : typed.digits + key
  return { ...typed, digits: digits === '.' ? '0.' : digits }
}

export const typedText = ({ digits, minus }: Typed): string => `${minus ? '−' : ''}${digits}`
export const unitOf = (units: UnitSystem): string => (units === 'us' ? '°F' : '°C')

/** The level that was typed; null while nothing is. */
export function typedTemp({ digits, minus }: Typed, units: UnitSystem): Celsius | null {
  const value = Number.parseFloat(digits)
  if (!Number.isFinite(value)) return null
  const signed = minus ? -value : value
  return units === 'us' ? fromFahrenheit(signed) : celsius(signed)
}

const { min: LEAST_C, max: MOST_C } = READING_LIMITS
/** One sentence where no probe reads this. */
export function faultOf(temp: Celsius, units: UnitSystem): string | null {
  if (temp >= LEAST_C && temp <= MOST_C) return null
  const told = (level: Celsius) => formatTemp(level, units)
  return noProbeReads(told(temp), told(celsius(LEAST_C)), told(celsius(MOST_C)))
}

/** As a log entry has it: in the unit that was typed, with the digits that were typed. */
export const tempDocument = (typed: Typed, units: UnitSystem): string =>
  `${typed.minus ? '-' : ''}${typed.digits.replace(/\.$/, '')} ${unitOf(units)}`
