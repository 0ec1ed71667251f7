import { rmSync } from 'node:fs'
import { afterAll, describe, expect, it } from 'vitest'
import { putEmptyDatabase } from '../../empty-database'
import { killServer } from '../kill-server'
import { freshFolder } from '../real-database'

/** The proof kills ends a server a hundred times. */
const KILLS = 10
let folder = ''
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('a server killed under writes', () => {
  it(`loses and doubles no acknowledged entry in ${KILLS} ends at random moments, its database deleted in between`, async () => {
    folder = freshFolder()
    // In between an empty one stands in its place, which comes to the same and takes no making.
    const killed = await killServer(folder, KILLS, 11, 4, putEmptyDatabase)
    expect(killed).toMatchObject({ kills: KILLS, lost: 0, doubled: 0 })
    expect(killed.rebuilds).toBe(3)
    // It would prove nothing if hardly anything had been written.
    expect(killed.acknowledged).toBeGreaterThan(KILLS)
    expect(killed.kept).toBeGreaterThanOrEqual(killed.acknowledged)
  }, 600_000)
})
