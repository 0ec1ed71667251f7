import type { MomentId } from '../model/moment-ids'
import type { DayForecast } from './day-forecast'

/**
 * What the day reads of the forecasts, as bytes: a browser lays out from the same samples to the last bit. First the
 * length of the head, then the head as JSON, then every cook's moments and what its probe reads.
 */
interface Head {
  readonly id: string
  readonly members: number
  readonly cook: DayForecast['cook']
  readonly moments: readonly MomentId[]
  readonly startS: number
  readonly stepS: number
  readonly count: number
}
export type Forecasts = ReadonlyMap<string, DayForecast>

/** Long numbers begin at their own width. */
const aligned = (bytes: number) => Math.ceil(bytes / 8) * 8
const LENGTH_BYTES = 8

export function packForecasts(forecasts: Forecasts): Uint8Array<ArrayBuffer> {
  const heads = [...forecasts].map(([id, forecast]) => headOf(id, forecast))
  const head = new TextEncoder().encode(JSON.stringify(heads))
  const body = LENGTH_BYTES + aligned(head.length)
  const bytes = new Uint8Array(body + heads.reduce((sum, h) => sum + sizeOf(h), 0))
  new DataView(bytes.buffer).setUint32(0, head.length, true)
  bytes.set(head, LENGTH_BYTES)
  let at = body
  heads.forEach((h) => {
    const forecast = forecasts.get(h.id) as DayForecast
    const times = new Float64Array(bytes.buffer, at, h.members * h.moments.length)
    h.moments.forEach((id, i) => {
      times.set(forecast.moments[id] as ArrayLike<number>, i * h.members)
    })
    new Float32Array(bytes.buffer, at + times.byteLength, h.members * h.count).set(forecast.trace.probeC)
    at += sizeOf(h)
  })
  return bytes
}

const headOf = (id: string, { members, cook, moments, trace }: DayForecast): Head => ({
  id,
  members,
  cook,
  moments: (Object.keys(moments) as MomentId[]).filter((moment) => moments[moment] !== undefined),
  startS: trace.startS,
  stepS: trace.stepS,
  count: trace.count,
})
const sizeOf = ({ members, moments, count }: Head) => members * moments.length * 8 + aligned(members * count * 4)

/** The temperatures that nobody calls by are not sent. */
const NONE = new Float32Array(0)

export function unpackForecasts(buffer: ArrayBuffer): Forecasts {
  const length = new DataView(buffer).getUint32(0, true)
  const heads: readonly Head[] = JSON.parse(new TextDecoder().decode(new Uint8Array(buffer, LENGTH_BYTES, length)))
  let at = LENGTH_BYTES + aligned(length)
  return new Map(
    heads.map((h) => {
      const times = new Float64Array(buffer, at, h.members * h.moments.length)
      const probeC = new Float32Array(buffer, at + times.byteLength, h.members * h.count)
      at += sizeOf(h)
      const moments = Object.fromEntries(
        h.moments.map((id, i) => [id, times.subarray(i * h.members, (i + 1) * h.members)]),
      )
      const { id, members, cook, startS, stepS, count } = h
      const trace = { startS, stepS, count, probeC, cookerC: NONE, surfaceC: NONE, coreC: NONE }
      return [id, { members, cook, moments, trace } as DayForecast]
    }),
  )
}
