import { execFileSync } from 'node:child_process'
import { existsSync, readdirSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { MODEL_VERSION } from '../model/version'

/** A long proof: `tests/proofs/NAME.ts` exports `prove`. It throws where the claim does not hold. */
export type Proof = (options: { readonly seed: number }) => Promise<Record<string, number>> | Record<string, number>

const FOLDER = path.resolve('tests/proofs')
/** What waits for its claim to hold is run by its place, "open/NAME". */
const names = ['', 'open/'].flatMap((place) =>
  // Git keeps no empty folder.
  (existsSync(path.join(FOLDER, place)) ? readdirSync(path.join(FOLDER, place)) : [])
    .filter((file) => file.endsWith('.ts'))
    .map((file) => `${place}${path.basename(file, '.ts')}`),
)

function commit(): string {
  const head = execFileSync('git', ['rev-parse', 'HEAD'], { encoding: 'utf8' }).trim()
  const changed = execFileSync('git', ['status', '--porcelain', '--', 'lib'], { encoding: 'utf8' }) !== ''
  return changed ? `${head} with changes` : head
}

async function main() {
  const [name, seedText] = process.argv.slice(2)
  if (!name || !names.includes(name)) {
    console.error(`Write: npm run prove -- NAME [SEED]. There are: ${names.join(', ')}.`)
    process.exit(2)
  }
  const seed = Number(seedText ?? 1)
  const started = performance.now()
  const { prove } = (await import(path.join(FOLDER, `${name}.ts`))) as { prove: Proof }
  const figures = await prove({ seed })
  const tookS = Math.round((performance.now() - started) / 1000)
  const record = { proof: name, modelVersion: MODEL_VERSION, commit: commit(), seed, tookS, figures }
  writeFileSync(path.join(FOLDER, `${name}.json`), `${JSON.stringify(record, null, 2)}\n`)
  console.log(JSON.stringify(record, null, 2))
}

await main()
