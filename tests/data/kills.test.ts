import { rmSync } from 'node:fs'
import { afterAll, describe, expect, it } from 'vitest'
import { emptyDataFolder, putEmptyDatabase } from '../empty-database'
import { copyOfMigrated, onServer } from '../migrated-database'
import { folderPlace, serverPlace } from './kill-places'
import { killServer, removeWriter } from './kill-server'

/** The proof kills ends a server five hundred times. */
const KILLS = 4
afterAll(removeWriter)

describe('a server killed while five of a crew live their day', () => {
  it(`loses and doubles nothing acknowledged in ${KILLS} ends at random moments, and its archives are the same to the byte`, async () => {
    const folder = emptyDataFolder()
    // In place of a lost database stands an empty one, which comes to the same and takes no making.
    const place = onServer()
      ? serverPlace(await copyOfMigrated(), copyOfMigrated)
      : folderPlace(folder, putEmptyDatabase)
    const killed = await killServer(place, KILLS, 11, 2)
    rmSync(folder, { recursive: true, force: true })
    expect(killed).toMatchObject({ kills: KILLS, lost: 0, doubled: 0, archivesApart: 0 })
    expect(killed.rebuilds).toBe(onServer() ? 0 : 3)
    // It would prove nothing if hardly anything had been written.
    expect(killed.acknowledged).toBeGreaterThan(KILLS)
    expect(killed.kept).toBeGreaterThanOrEqual(killed.acknowledged)
  }, 600_000)
})
