import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { hearAll } from '../../lib/cli/hear-all'
import { type RunningApp, startApp } from './server'

const LISTENERS = 200
/** The proof open/listeners hears ten minutes, and watches the memory. */
const SECONDS = 12
let app: RunningApp
beforeAll(async () => {
  app = await startApp()
}, 300_000)
afterAll(() => app.stop())

describe('the events of a running shoot', () => {
  it(`reach ${LISTENERS} listeners with a reading each second, each once and 99 % within half a second`, async () => {
    const heard = await hearAll(app, LISTENERS, SECONDS)
    expect(heard).toMatchObject({ readings: SECONDS, notDelivered: 0, doubled: 0 })
    expect(heard.p99Ms).toBeLessThan(500)
  }, 120_000)
})
