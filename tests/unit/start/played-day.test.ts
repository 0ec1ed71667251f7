import { readFileSync, statSync } from 'node:fs'
import { gzipSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { eventAt, forecastAt } from '../../../app/start/played-frame'
import { DEMO_FILE, PLAYED_FILE, playedKey } from '../../../lib/cli/played-day'
import type { PlayedPicture } from '../../../lib/session/played-picture'

const text = readFileSync(PLAYED_FILE, 'utf8')
const day = JSON.parse(text) as PlayedPicture & { key: string }

describe('the day that the start page plays', () => {
  it('is of this demo and this model: where it fails, npm run played-day makes it anew', () => {
    expect(day.key).toBe(playedKey(readFileSync(DEMO_FILE, 'utf8')))
  })

  it('is small', () => {
    expect(statSync(PLAYED_FILE).size).toBeLessThan(40_000)
    expect(gzipSync(text).length).toBeLessThan(8_000)
  })

  it('narrows: the window of the first slice is shorter with each hour of readings', () => {
    const slice = day.moments.findIndex(({ name }) => name === 'first slice')
    const widthAt = (minute: number) => {
      const [early, , late] = forecastAt(day, minute).windows[slice] ?? [0, 0, 0]
      return late - early
    }
    const at = day.moments[slice]?.at ?? 0
    expect(widthAt(at - 30)).toBeLessThan(0.5 * widthAt(0))
    expect(widthAt(at + 1)).toBe(0)
  })

  it('tells who stands by before each moment happens', () => {
    const vents = day.moments.find(({ name }) => name === 'vents open')?.at ?? 0
    const called = day.events.find(({ words }) => /^camera . stands by at the cooker: “Vents/.test(words))
    expect(called?.at).toBeLessThan(vents)
    expect(eventAt(day, vents)?.words).toBe('vents open')
  })
})
