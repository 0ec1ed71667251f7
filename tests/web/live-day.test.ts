import { readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { hearMoves } from '../../lib/cli/hear-moves'
import { readyApp } from './server'

const TIMES = 3
const app = readyApp()

async function ownShoot(): Promise<string> {
  const document = JSON.parse(readFileSync('tests/fixtures/shoots/pork-loin.json', 'utf8'))
  const body = JSON.stringify({ writeId: 'live-day-test-1', document })
  const headers = { 'content-type': 'application/json' }
  const answer = await fetch(`${app.address}/api/shoots`, { method: 'POST', headers, body })
  return ((await answer.json()) as { id: string }).id
}

describe('a day under way', () => {
  it('moves calls on another phone after a reading, and keeps every forecast it told', async () => {
    const shoot = await ownShoot()
    const took = await hearMoves(app, TIMES, shoot)
    expect(took.every(Number.isFinite)).toBe(true)
    const kept = readFileSync(path.join(app.folder, 'forecasts', `${shoot}.ndjson`), 'utf8')
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as { id: string; after: string | null; forecast: { reason: string } })
    expect(kept.length).toBeGreaterThanOrEqual(TIMES)
    expect(kept.slice(1).map(({ after }) => after)).toEqual(kept.slice(0, -1).map(({ id }) => id))
    expect(kept.every(({ forecast }) => forecast.reason.endsWith('.'))).toBe(true)
  }, 120_000)
})
