import { rmSync } from 'node:fs'
import { afterAll, describe, expect, it } from 'vitest'
import { killServer } from './kill-server'
import { freshFolder } from './real-database'

/** Few for every day: each takes some 16 s under load. The proof kills ends a server a hundred times. */
const KILLS = 4
let folder = ''
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('a server killed under writes', () => {
  it(`loses and doubles no acknowledged entry in ${KILLS} ends at random moments, its database deleted in between`, async () => {
    folder = freshFolder()
    const killed = await killServer(folder, KILLS, 11, 3)
    expect(killed).toMatchObject({ kills: KILLS, lost: 0, doubled: 0 })
    expect(killed.rebuilds).toBeGreaterThanOrEqual(2)
    // It would prove nothing if hardly anything had been written.
    expect(killed.acknowledged).toBeGreaterThan(KILLS)
    expect(killed.kept).toBeGreaterThanOrEqual(killed.acknowledged)
  }, 600_000)
})
