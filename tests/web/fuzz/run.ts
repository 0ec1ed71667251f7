import { type Asked, askedFor } from './ask'
import { faultsOf, holds } from './judge'
import { type Answer, send } from './send'
import { CANARIES, hiddenFrom, type World } from './world'

/** However busy the two cores are, nothing waits longer: a card's table of sizes is fifteen forecasts. */
export const BOUND_MS = 60_000

export interface Tally {
  requests: number
  readonly byVisitor: Record<string, number>
  readonly byRoute: Record<string, number>
  readonly byStatus: Record<string, number>
  /** Answers in which somebody who may see it found a shoot's word: without these the search for it would say nothing. */
  seen: number
  slowest: { ms: number; what: string }
  readonly faults: { readonly said: string; readonly line: string }[]
}
export const emptyTally = (): Tally => ({
  requests: 0,
  byVisitor: {},
  byRoute: {},
  byStatus: {},
  seen: 0,
  slowest: { ms: 0, what: '' },
  faults: [],
})

/** Enough on one line to send it again. */
export function lineOf(
  seed: number,
  { number, as, method, target, wrong }: Asked,
  said: string,
  status: number,
): string {
  const what = `${as}: ${method} ${target.slice(0, 90)} (${wrong.join('; ').slice(0, 120) || 'nothing wrong'})`
  return `${said} | ${status} | ${what} | again: EMBERSLATE_FUZZ=${seed}:${number} npx vitest run --config tests/vitest.config.mjs tests/web/fuzz.test.ts`
}

function count(tally: Tally, asked: Asked, { status, outcome, tookMs, body }: Answer) {
  tally.requests++
  const add = (record: Record<string, number>, key: string) => {
    record[key] = (record[key] ?? 0) + 1
  }
  add(tally.byVisitor, asked.as)
  add(tally.byRoute, asked.route)
  add(tally.byStatus, outcome === 'answered' ? String(status) : outcome)
  if (tookMs > tally.slowest.ms)
    tally.slowest = { ms: tookMs, what: `${asked.number}: ${asked.method} ${asked.target.slice(0, 60)}` }
  const hidden = hiddenFrom(asked.as)
  if (Object.values(CANARIES).some((word) => !hidden.includes(word) && holds(body, word))) tally.seen++
}

async function one(seed: number, number: number, world: World, tally: Tally): Promise<void> {
  const asked = askedFor(seed, number, world)
  const answer = await send(world.port, asked.raw, BOUND_MS)
  count(tally, asked, answer)
  for (const said of faultsOf(asked, answer, world))
    tally.faults.push({ said, line: lineOf(seed, asked, said, answer.status) })
}

/** Sends the requests of these numbers, so many at a time, and judges each answer. */
export async function run(
  seed: number,
  numbers: Iterable<number>,
  world: World,
  tally = emptyTally(),
  lanes = 6,
): Promise<Tally> {
  const left = numbers[Symbol.iterator]()
  const lane = async () => {
    for (let next = left.next(); !next.done; next = left.next()) await one(seed, next.value, world, tally)
  }
  await Promise.all(Array.from({ length: lanes }, lane))
  return tally
}
export function* range(from: number, to: number): Generator<number> {
  for (let i = from; i < to; i++) yield i
}

/** Each kind of fault once, with how often it was met. */
export function told(tally: Tally): string[] {
  const kinds = new Map<string, { line: string; times: number }>()
  for (const { said, line } of tally.faults) {
    const route = line.split('|')[2]?.trim().split(' ').slice(1, 2).join(' ') ?? ''
    const kind = `${said.replace(/\d+ ms/, '')} ${route}`
    const known = kinds.get(kind)
    if (known) known.times++
    else kinds.set(kind, { line, times: 1 })
  }
  return [...kinds.values()].map(({ line, times }) => `${times} x ${line}`)
}
