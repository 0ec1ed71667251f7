import { rmSync } from 'node:fs'
import { folderPlace, ownFolder, serverPlace } from '../data/kill-places'
import { type Killed, killServer, removeWriter } from '../data/kill-server'
import { startPostgres } from '../postgres'

/** So many ends by force in each mode, in lanes beside each other, each with a place of its own. */
const KILLS = 250
const LANES = 2
const REBUILD_EACH = 10

const figuresOf = (mode: string, lanes: readonly Killed[]) => {
  const sum = (of: (lane: Killed) => number) => lanes.reduce((all, lane) => all + of(lane), 0)
  return {
    [`${mode}_kills`]: sum((lane) => lane.kills),
    [`${mode}_at_start`]: sum((lane) => lane.atStart),
    [`${mode}_rebuilds`]: sum((lane) => lane.rebuilds),
    [`${mode}_acknowledged`]: sum((lane) => lane.acknowledged),
    [`${mode}_kept`]: sum((lane) => lane.kept),
    [`${mode}_lost`]: sum((lane) => lane.lost),
    [`${mode}_doubled`]: sum((lane) => lane.doubled),
    [`${mode}_archives_apart`]: sum((lane) => lane.archivesApart),
  }
}
const inLanes = (seed: number, of: (lane: number) => Parameters<typeof killServer>[0]) =>
  Promise.all(
    Array.from({ length: LANES }, (_, i) => killServer(of(i), KILLS / LANES, seed * LANES + i, REBUILD_EACH)),
  )

/** A server killed at random moments while five of a crew live their day, in a data folder and on a PostgreSQL. */
export async function prove({ seed }: { readonly seed: number }): Promise<Record<string, number>> {
  const folders = Array.from({ length: LANES }, ownFolder)
  const postgres = await startPostgres({ synced: true })
  try {
    const create = () => postgres.createDatabase()
    const urls = await Promise.all(folders.map(create))
    const embedded = await inLanes(seed, (i) => folderPlace(folders[i] as string))
    const server = await inLanes(seed + 1, (i) => serverPlace(urls[i] as string, create))
    const figures = { ...figuresOf('embedded', embedded), ...figuresOf('server', server) }
    const wrong = [...embedded, ...server].some(
      (lane) => lane.lost > 0 || lane.doubled > 0 || lane.archivesApart > 0 || lane.acknowledged < lane.kills,
    )
    if (wrong) throw new Error(`Lost, doubled, apart, or hardly written.\n${JSON.stringify(figures, null, 2)}`)
    return figures
  } finally {
    removeWriter()
    await postgres.stop()
    for (const folder of folders) rmSync(folder, { recursive: true, force: true })
  }
}
