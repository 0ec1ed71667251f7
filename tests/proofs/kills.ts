import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { killServer } from '../data/kill-server'

const KILLS = 100
/** Servers that are killed beside each other, each on a folder of its own. */
const LANES = 2
const REBUILD_EACH = 10

/** A server killed at random moments under writes, its database deleted now and then and rebuilt from the journal. */
export async function prove({ seed }: { readonly seed: number }): Promise<Record<string, number>> {
  const folders = Array.from({ length: LANES }, () => mkdtempSync(path.join(tmpdir(), 'emberslate-kills-')))
  try {
    const lanes = await Promise.all(folders.map((folder, i) => killServer(folder, KILLS / LANES, seed * LANES + i, REBUILD_EACH)))
    const sum = (of: (lane: (typeof lanes)[number]) => number) => lanes.reduce((all, lane) => all + of(lane), 0)
    const figures = {
      kills: sum((lane) => lane.kills),
      at_start: sum((lane) => lane.atStart),
      rebuilds: sum((lane) => lane.rebuilds),
      acknowledged: sum((lane) => lane.acknowledged),
      kept: sum((lane) => lane.kept),
      lost: sum((lane) => lane.lost),
      doubled: sum((lane) => lane.doubled),
    }
    if (figures.lost > 0 || figures.doubled > 0 || figures.acknowledged < KILLS)
      throw new Error(`Lost or doubled, or hardly written.\n${JSON.stringify(figures, null, 2)}`)
    return figures
  } finally {
    for (const folder of folders) rmSync(folder, { recursive: true, force: true })
  }
}
