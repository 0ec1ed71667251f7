import 'server-only'
import { readFile, rm } from 'node:fs/promises'
import path from 'node:path'
import { z } from 'zod'
import type { LiveForecast } from '../session/session'
import type { Instant } from '../units'
import { appendSynced } from './append-synced'
import { database } from './client'

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

const fileOf = (folder: string, shootId: string) => path.join(folder, 'forecasts', `${shootId}.ndjson`)

/** Puts an applied forecast on the disk for good; its curves are a picture that the next one draws anew. */
export async function keepForecast(shootId: string, { forecast, ...step }: AppliedForecast): Promise<void> {
  const { folder } = await database()
  const { lines: _, ...kept } = forecast
  await appendSynced(fileOf(folder, shootId), [JSON.stringify({ ...step, forecast: kept })])
}

/** All of them as they are kept, whole lines only. */
export async function keptForecasts(shootId: string): Promise<string> {
  return (await linesOf(shootId)).flatMap((line) => (readLine(line) ? [`${line}\n`] : [])).join('')
}
/** Those of an archive, in place of any. */
export async function putForecasts(folder: string, shootId: string, text: string): Promise<void> {
  const file = fileOf(folder, shootId)
  await rm(file, { force: true })
  const lines = text.split('\n').filter((line) => readLine(line))
  if (lines.length > 0) await appendSynced(file, lines)
}

async function linesOf(shootId: string): Promise<readonly string[]> {
  const { folder } = await database()
  const text = await readFile(fileOf(folder, shootId), 'utf8').catch(() => '')
  return text.trimEnd().split('\n')
}
/** Every forecast that was applied since. */
export async function forecastsSince(shootId: string, since: number): Promise<AppliedForecast[]> {
  return (await forecastsTold(shootId)).filter(({ at }) => at >= since)
}

/** The last whole line; one that a power cut left half written does not count. */
export async function lastForecast(shootId: string): Promise<AppliedForecast | null> {
  for (const line of [...(await linesOf(shootId))].reverse()) {
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
