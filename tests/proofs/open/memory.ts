import { availableParallelism } from 'node:os'
import { shared } from '../../twins/in-shards'
import type { Guess } from '../../twins/memory-days'
import type { MemoryShare } from '../../twins/memory-shard'

const COOKERS = 100
const LOGGED = 3
const FALLS = 0.3
const COVERED = [0.72, 0.88] as const

/**
 * The pull of a fourth cook before its fire, forecast without and with what one to three logged cooks taught of the cooker, for a
 * crew that measures its roast's thickness; and for one that only weighs it, of which nothing is claimed.
 */
export async function prove({ seed }: { readonly seed: number }): Promise<Record<string, number>> {
  const of = availableParallelism()
  const shares = await Promise.all(
    Array.from({ length: of }, (_, shard) => shared<MemoryShare, Guess>('./memory-shard.ts', { seed, cookers: COOKERS, shard, of })),
  )
  const all = shares.flat()
  const lines = [true, false].flatMap((measured) =>
    Array.from({ length: LOGGED + 1 }, (_, cooks) => lineOf(all.filter((g) => g.measured === measured && g.cooks === cooks))),
  )
  console.error('cooks | thickness | error min | 80 % covers | width min')
  for (const { cooks, measured, maeMin, covered, widthMin } of lines)
    console.error(
      [cooks, measured ? 'measured' : 'not', maeMin.toFixed(2), `${Math.round(100 * covered)} %`, widthMin.toFixed(1)].join(' | '),
    )
  const at = (cooks: number, measured: boolean) => lines.find((l) => l.cooks === cooks && l.measured === measured) as Line
  const [before, after] = [at(0, true), at(LOGGED, true)]
  const falls = 1 - after.maeMin / before.maeMin
  const misses = [
    falls < FALLS && `the error falls by ${(100 * falls).toFixed(0)} %, asked are ${100 * FALLS} %`,
    (after.covered < COVERED[0] || after.covered > COVERED[1]) && `80 % intervals cover ${(100 * after.covered).toFixed(0)} %`,
  ].filter((miss) => miss !== false)
  if (misses.length > 0) throw new Error(misses.join('\n'))
  return {
    cookers: COOKERS,
    falls: rounded(falls),
    ...Object.fromEntries(
      lines.flatMap(({ cooks, measured, maeMin, covered }) => {
        const key = `${measured ? '' : 'unmeasured_'}after_${cooks}`
        return [
          [`${key}_mae_min`, rounded(maeMin)],
          [`${key}_covered`, rounded(covered)],
        ]
      }),
    ),
  }
}

type Line = ReturnType<typeof lineOf>
function lineOf(guesses: readonly Guess[]) {
  const mean = (of: (guess: Guess) => number) => guesses.reduce((sum, g) => sum + of(g), 0) / guesses.length
  return {
    cooks: guesses[0]?.cooks ?? 0,
    measured: guesses[0]?.measured ?? false,
    maeMin: mean((g) => Math.abs(g.errorMin)),
    covered: mean((g) => (g.inside ? 1 : 0)),
    widthMin: mean((g) => g.widthMin),
  }
}
const rounded = (x: number) => Math.round(100 * x) / 100
