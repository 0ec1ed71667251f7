import type { PlayedForecast, PlayedPicture } from '@/lib/session/played-picture'

/** Where the parts of the played picture stand; px of its own box, y downwards. */
export interface PlayedFrame {
  readonly width: number
  readonly height: number
  readonly wide: boolean
  readonly left: number
  readonly right: number
  readonly step: number
  readonly flags: number
  readonly meat: { readonly top: number; readonly bottom: number; readonly y: (c: number) => number }
  readonly cooker: { readonly top: number; readonly bottom: number; readonly y: (c: number) => number }
  readonly hours: number
  readonly x: (minute: number) => number
}

const TOP_C = 80
const COOKER_TOP_C = 360

export function playedFrame(day: PlayedPicture, wide: boolean): PlayedFrame {
  const rows = 1 + Math.max(...day.moments.map(({ row }) => row))
  const [width, left, right, step] = wide ? [1232, 92, 1212, 25] : [360, 34, 354, 0]
  const flags = 40
  const meatTop = wide ? flags + rows * step + 10 : 62
  const meatBottom = meatTop + (wide ? 170 : 150)
  const cookerTop = meatBottom + 24
  const cookerBottom = cookerTop + (wide ? 56 : 46)
  const level = (top: number, bottom: number, most: number) => (c: number) =>
    bottom - (Math.min(most, Math.max(0, c)) / most) * (bottom - top)
  return {
    width,
    height: cookerBottom + 26,
    wide,
    left,
    right,
    step,
    flags,
    meat: { top: meatTop, bottom: meatBottom, y: level(meatTop, meatBottom, TOP_C) },
    cooker: { top: cookerTop, bottom: cookerBottom, y: level(cookerTop, cookerBottom, COOKER_TOP_C) },
    hours: cookerBottom + 19,
    x: (minute) => left + (Math.min(day.minutes, Math.max(0, minute)) / day.minutes) * (right - left),
  }
}

/** The forecast that counts at a minute of the day. */
export const forecastAt = (day: PlayedPicture, minute: number): PlayedForecast =>
  day.forecasts.findLast(({ from }) => from <= minute) ?? (day.forecasts[0] as PlayedForecast)
/** What was said last. */
export const eventAt = (day: PlayedPicture, minute: number) => day.events.findLast(({ at }) => at <= minute)

/** A line through points, as a path. */
export const along = (points: readonly (readonly [number, number])[]): string =>
  points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('')
