/** What a shoot file remembers of a cooker: middles with their spreads, as a person writes them ("−11 °C ± 3 °C"). */
import { z } from 'zod'
import type { Belief, CookerMemory } from '../model/cooker-memory'
import { type Dimension, readQuantity } from '../units'
import { number, record } from './fields'
import { quoted } from './nearest'

interface Limits {
  readonly dimension: Dimension
  readonly what: string
  /** Of the middle, and the widest spread; SI. */
  readonly from: number
  readonly to: number
  readonly widest: number
  readonly narrowest: number
  readonly example: string
}
const PATTERN = '^\\s*[-−+]?\\d.*±\\s*\\d.*[^\\d\\s]\\s*$'

/** "a ± b" in one dimension; temperatures are differences, so that 18 °F are 10 K. */
const belief = (limits: Limits) =>
  z
    .unknown()
    .meta({
      type: 'string',
      pattern: PATTERN,
      examples: [limits.example],
      description: `${limits.what}, ± one standard deviation.`,
    })
    .transform((written, ctx): Belief => {
      const read = readBelief(written, limits)
      if (typeof read !== 'string') return read
      ctx.addIssue({ code: 'custom', message: read })
      return z.NEVER
    })

function readBelief(
  written: unknown,
  { dimension, what, from, to, widest, narrowest, example }: Limits,
): Belief | string {
  const right = `Write it with its spread, such as "${example}".`
  if (written === undefined) return `${what} is missing here. ${right}`
  const parts = typeof written === 'string' ? written.split(/±|\+\/?-/) : []
  const [mean, sd] = parts.map((part) => differenceOf(part, dimension))
  if (parts.length !== 2 || mean === undefined || sd === undefined)
    return `${quoted(written)} is not a value with its spread. ${right}`
  if (mean < from || mean > to) return `${quoted(written)} is further off than any cooker that works. ${right}`
  if (sd < narrowest || sd > widest)
    return `The spread of ${quoted(written)} is ${sd < narrowest ? 'narrower than a few cooks can tell' : 'wider than not knowing at all'}. ${right}`
  return { mean, sd }
}
function differenceOf(text: string, dimension: Dimension): number | undefined {
  const read = readQuantity(text, dimension)
  if (!read.ok) return undefined
  if (dimension !== 'temperature') return read.si
  const zero = readQuantity(text.replace(/[-−+]?\d+(?:[.,]\d+)?/, '0'), dimension)
  return zero.ok ? read.si - zero.si : undefined
}

const LEVEL: Limits = {
  dimension: 'temperature',
  what: 'The heat at the meat against the dial',
  from: -60,
  to: 60,
  narrowest: 0.2,
  widest: 30,
  example: '−11 °C ± 3 °C',
}
const PACE: Limits = {
  dimension: 'share',
  what: 'How much longer a roast takes here',
  from: -0.5,
  to: 1,
  narrowest: 0.005,
  widest: 0.4,
  example: '6 % ± 4 %',
}
const WARM_UP: Limits = {
  dimension: 'duration',
  what: 'The time to warm up',
  from: 60,
  to: 4 * 3600,
  narrowest: 15,
  widest: 3600,
  example: '50 min ± 6 min',
}
/** Part of a cooker; `lib/model/cooker-memory.ts` says what each means. */
export const MEMORY = record('a cooker memory', {
  cooks: number('a number of logged cooks', 1, 999, true),
  level: belief(LEVEL),
  pace: belief(PACE).transform(({ mean, sd }) => ({ mean: Math.log1p(mean), sd })),
  tie: number('a correlation', -0.99, 0.99).optional(),
  warmUp: belief(WARM_UP).optional(),
})

/** As the shoot file has it; reading it again gives the memory to the digits written. */
export function writtenMemory({ cooks, level, pace, tie, warmUp }: CookerMemory): Record<string, unknown> {
  const signed = (x: number, digits: number) =>
    x
      .toFixed(digits)
      .replace(/^-(?=[0.]*$)/, '')
      .replace('-', '−')
  const time = (s: number) => `${Number((s / 60).toFixed(1))} min`
  return {
    cooks,
    level: `${signed(level.mean, 1)} °C ± ${Math.max(LEVEL.narrowest, level.sd).toFixed(1)} °C`,
    pace: `${signed(100 * Math.expm1(pace.mean), 1)} % ± ${(100 * Math.max(PACE.narrowest, pace.sd)).toFixed(1)} %`,
    ...(tie === undefined || Math.abs(tie) < 0.005 ? {} : { tie: Number(tie.toFixed(2)) }),
    ...(warmUp === undefined
      ? {}
      : { warmUp: `${time(warmUp.mean)} ± ${time(Math.max(WARM_UP.narrowest, warmUp.sd))}` }),
  }
}
