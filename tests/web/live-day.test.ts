import { readFileSync } from 'node:fs'
import path from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { hearMoves } from '../../lib/cli/hear-moves'
import { type RunningApp, startApp } from './server'

const TIMES = 3
let app: RunningApp
beforeAll(async () => {
  app = await startApp()
}, 300_000)
afterAll(() => app.stop())

describe('a day under way', () => {
  it('moves calls on another phone after a reading, and keeps every forecast it told', async () => {
    const took = await hearMoves(app, TIMES)
    expect(took.every(Number.isFinite)).toBe(true)
    const { shoots } = (await (await fetch(`${app.address}/api/shoots`)).json()) as { shoots: { id: string }[] }
    const kept = readFileSync(path.join(app.folder, 'forecasts', `${shoots[0]?.id}.ndjson`), 'utf8')
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as { id: string; after: string | null; forecast: { reason: string } })
    expect(kept.length).toBeGreaterThanOrEqual(TIMES)
    expect(kept.slice(1).map(({ after }) => after)).toEqual(kept.slice(0, -1).map(({ id }) => id))
    expect(kept.every(({ forecast }) => forecast.reason.endsWith('.'))).toBe(true)
  }, 120_000)
})
