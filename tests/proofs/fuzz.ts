import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { type Memory, memoryOf } from '../web/fuzz/memory'
import { emptyTally, range, run, told } from '../web/fuzz/run'
import { stalled } from '../web/fuzz/stalled'
import { makeWorld, strangers } from '../web/fuzz/world'

const REQUESTS = 20_000
const ROUNDS = 20
/** Rounds in which everything is loaded and remembered for the first time. */
const WARM = 4
/** Of what is held after collecting, the later half's mean over the earlier's: what rounds of chance may differ by. */
const GROWS_MB = 12
const WORDS_SEEN = 500
const STALLED = 10

/** Requests broken on purpose as every visitor: each is answered as it should be, and nothing is held that came with them. */
export async function prove({ seed }: { readonly seed: number }): Promise<Record<string, number>> {
  const memory = memoryOf()
  const folder = mkdtempSync(path.join(tmpdir(), 'emberslate-fuzz-'))
  const world = await makeWorld(memory.env, folder)
  try {
    const waiting = stalled(world, STALLED)
    const tally = emptyTally()
    const held: Memory[] = []
    const each = REQUESTS / ROUNDS
    for (let round = 0; round < ROUNDS; round++) {
      await run(seed, range(round * each, (round + 1) * each), world, tally)
      if (world.pid !== null) held.push(await memory.ask(world.pid))
      console.error(`${tally.requests} sent, ${tally.faults.length} faults, ${JSON.stringify(held.at(-1) ?? {})}`)
    }
    const slowLines = await waiting
    const rest = held.slice(WARM)
    const half = rest.length >> 1
    const grown = held.length > 0 ? mean(rest.slice(half)) - mean(rest.slice(0, half)) : 0
    console.error(JSON.stringify({ routes: tally.byRoute, slowest: tally.slowest }, null, 2))
    const faults = [
      ...told(tally),
      ...(grown > GROWS_MB ? [`what the server holds grew by ${grown.toFixed(1)} MB from half to half`] : []),
      ...(tally.seen < WORDS_SEEN ? [`only ${tally.seen} answers showed a shoot to who may see it`] : []),
      ...slowLines.faults,
      ...(await strangers(world)),
    ]
    if (faults.length > 0) throw new Error(faults.join('\n'))
    const figures = {
      requests: tally.requests,
      faults: 0,
      slowest_ms: Math.round(tally.slowest.ms),
      stalled_lines: STALLED,
      stalled_ended_after_s: Math.round(slowLines.longestMs / 1000),
      words_seen_by_right: tally.seen,
      held_first_mb: Math.round(held[WARM]?.heldMb ?? 0),
      held_last_mb: Math.round(held.at(-1)?.heldMb ?? 0),
      held_grew_mb: Math.round(10 * grown) / 10,
      rss_last_mb: Math.round(held.at(-1)?.rssMb ?? 0),
      routes: Object.keys(tally.byRoute).length,
    }
    return { ...figures, ...keyed('as', tally.byVisitor), ...keyed('status', tally.byStatus), ...keyed('to', tally.byRoute) }
  } finally {
    await world.stop()
    memory.remove()
    rmSync(folder, { recursive: true, force: true })
  }
}

const mean = (all: readonly Memory[]) => all.reduce((sum, { heldMb }) => sum + heldMb, 0) / all.length
const keyed = (what: string, record: Record<string, number>) =>
  Object.fromEntries(Object.entries(record).sort().map(([key, n]) => [`${what} ${key}`, n]))
