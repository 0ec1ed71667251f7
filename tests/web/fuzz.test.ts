import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { emptyTally, range, run, told } from './fuzz/run'
import { makeWorld, strangers, VISITORS, type World } from './fuzz/world'

const REQUESTS = 500
/** `EMBERSLATE_FUZZ=SEED:NUMBER` sends one request again. */
const [seed = 1, only] = (process.env.EMBERSLATE_FUZZ ?? '1').split(':').map(Number)

let world: World
beforeAll(async () => {
  world = await makeWorld()
}, 300_000)
afterAll(() => world?.stop())

describe('requests that are broken on purpose, as everybody', () => {
  it('are all answered soon, without a fault of ours, and none tells a stranger of another shoot', async () => {
    const tally = await run(seed, only === undefined ? range(0, REQUESTS) : [only], world, emptyTally())
    expect(told(tally)).toEqual([])
    if (only !== undefined) return
    expect(Object.keys(tally.byVisitor).sort()).toEqual([...VISITORS].sort())
    expect(await strangers(world)).toEqual([])
    expect(tally.seen).toBeGreaterThan(10)
    expect(Object.keys(tally.byRoute).length).toBeGreaterThan(40)
  }, 60_000)
})
