import { existsSync } from 'node:fs'
import path from 'node:path'
import { type Database, openDatabase } from '../../data/client'
import { openServer } from '../../data/server/open-server'
import { type Sql, sqlOf, sqlOfClient } from '../../data/server/server-sql'
import { placeOf } from '../../data/server/server-words'
import { copyDoor, copyLines, copyPhotos, type MovedPhotos } from './copy-files'
import { copyShoots, type MovedShoots } from './copy-shoots'
import { makeEmpty } from './make-empty'

export interface Moved extends MovedShoots, MovedPhotos {
  readonly forecasts: number
  readonly cookers: number
  readonly door: number
  /** What opening the folder found and mended. */
  readonly notes: readonly string[]
}

/** Copies all that a folder keeps to an empty server, and reads back what arrived. All of it or nothing; the folder stays. */
export async function moveFolder(folder: string, url: string): Promise<Moved> {
  if (!['pg', 'journal'].some((name) => existsSync(path.join(folder, name))))
    throw new Error(`There is nothing to move in ${folder}. Set EMBERSLATE_DATA to the folder that Emberslate keeps.`)
  const here = await openDatabase(folder)
  try {
    const there = await openServer(url, undefined, '--to')
    try {
      const moved = await copyAll(here, there, folder)
      return { ...moved, notes: here.notes }
    } finally {
      await there.close()
    }
  } finally {
    await here.close()
  }
}

async function copyAll(here: Database, { server }: Database, folder: string): Promise<Omit<Moved, 'notes'>> {
  if (!server) throw new Error('A server was opened, and is none.')
  const client = await server.pool.connect()
  try {
    await client.query('BEGIN')
    const to: Sql = sqlOfClient(client)
    await makeEmpty(to, placeOf(server.url))
    const shoots = await copyShoots(sqlOf(here.prisma), to)
    const forecasts = await copyLines(folder, 'forecasts', to)
    const cookers = await copyLines(folder, 'cookers', to)
    const photos = await copyPhotos(folder, to)
    const door = await copyDoor(folder, to)
    await client.query('COMMIT')
    // The first questions should not be answered by guesses about tables that were empty a moment ago.
    await client.query('ANALYZE')
    return { ...shoots, ...photos, forecasts, cookers, door }
  } finally {
    // Closed and not handed back: what was begun and not committed ends with it.
    client.release(true)
  }
}
