import 'server-only'
import { z } from 'zod'
import type { LiveForecast } from '../session/session'
import type { Instant } from '../units'
import { appendLines, changeLines, lastLines, readLines, replaceLines } from './line-file'
import type { Sql } from './server/server-sql'

/** A forecast that was applied on the day, and the one it came after. Times are milliseconds. */
export interface AppliedForecast {
  readonly id: string
  readonly at: Instant
  readonly after: string | null
  readonly forecast: LiveForecast
}
/** Written by us alone: that it is whole is all there is to check. */
const LINE = z.object({
  id: z.string(),
  at: z.number(),
  after: z.string().nullable(),
  forecast: z.looseObject({ reason: z.string(), expected: z.array(z.looseObject({})) }),
})

const fileOf = (shootId: string) => `forecasts/${shootId}`
/** Of so many lines at the end one is whole. */
const ENOUGH = 20

/** Keeps an applied forecast for good; its curves are a picture that the next one draws anew. */
export async function keepForecast(shootId: string, { forecast, ...step }: AppliedForecast): Promise<void> {
  const { lines: _, ...kept } = forecast
  await appendLines(fileOf(shootId), [JSON.stringify({ ...step, forecast: kept })])
}

/** All of them as they are kept, whole lines only. */
export async function keptForecasts(shootId: string): Promise<string> {
  return (await linesOf(shootId)).flatMap((line) => (readLine(line) ? [`${line}\n`] : [])).join('')
}
/** Those of an archive, in place of any. */
export async function putForecasts(shootId: string, text: string, sql?: Sql): Promise<void> {
  await replaceLines(
    fileOf(shootId),
    text.split('\n').filter((line) => readLine(line)),
    sql,
  )
}
/** Each of them as `next` has it, within a transaction of a server; one that is told meanwhile waits, and is not lost. */
export const changeForecasts = (shootId: string, next: (line: string) => string, sql: Sql): Promise<void> =>
  changeLines(fileOf(shootId), (lines) => lines.map(next), sql)

const linesOf = (shootId: string) => readLines(fileOf(shootId))
/** Every forecast that was applied since. */
export async function forecastsSince(shootId: string, since: number): Promise<AppliedForecast[]> {
  return (await forecastsTold(shootId)).filter(({ at }) => at >= since)
}

/** The last whole line; one that a power cut left half written does not count. */
export async function lastForecast(shootId: string): Promise<AppliedForecast | null> {
  for (const line of [...(await lastLines(fileOf(shootId), ENOUGH))].reverse()) {
    const read = readLine(line)
    if (read) return read
  }
  return null
}
/** All of the day, in the order in which they were told. */
export async function forecastsTold(shootId: string): Promise<readonly AppliedForecast[]> {
  return (await linesOf(shootId)).flatMap((line) => readLine(line) ?? [])
}
/** The schema has plain numbers where the program has instants and seconds. */
function readLine(line: string): AppliedForecast | undefined {
  try {
    return LINE.safeParse(JSON.parse(line)).data as unknown as AppliedForecast | undefined
  } catch {
    return undefined
  }
}
