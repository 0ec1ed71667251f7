import { fork } from 'node:child_process'
import { availableParallelism } from 'node:os'
import { type FamilyTable, type Scored, tableFrom } from './table'
import { FAMILIES, type Family } from './twin'

export interface Share {
  readonly families: readonly Family[]
  readonly seed: number
  readonly each: number
  readonly shard: number
  readonly of: number
}

/** All twins of the families, shared out among as many processes as the machine has cores. */
export async function tablesInShards(
  seed: number,
  each: number,
  families: readonly Family[] = FAMILIES,
): Promise<FamilyTable[]> {
  const of = availableParallelism()
  const shares = await Promise.all(
    Array.from({ length: of }, (_, shard) => shared<Share, Scored>('./shard.ts', { families, seed, each, shard, of })),
  )
  return families.map((family) => tableFrom(family, shares.flat()))
}

/** The child inherits how this process was started, and with it what reads TypeScript. */
export function shared<S extends object, T>(script: string, share: S): Promise<readonly T[]> {
  return new Promise((resolve, reject) => {
    const child = fork(new URL(script, import.meta.url))
    child.once('message', (scored) => {
      resolve(scored as readonly T[])
      child.disconnect()
    })
    child.once('exit', (code) => reject(new Error(`A share of the twins ended with exit code ${code}`)))
    child.send(share)
  })
}
