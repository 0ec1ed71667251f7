/** What `npm start` and `npm test` need before they can work: packages, the generated database client, the build. */
import { spawn } from 'node:child_process'
import { createHash } from 'node:crypto'
import { accessSync, constants, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import path from 'node:path'

/** A reason not to go on, told as one sentence. */
export class Unready extends Error {}

const NEEDED = [20, 19]
const SOURCES = ['app', 'lib', 'prisma', 'public', 'instrumentation.ts', 'next.config.mjs', 'package-lock.json']
const MORE_SOURCES = ['postcss.config.mjs', 'proxy.ts', 'tsconfig.json', '.env']
/** Not part of the build: made by us, run without it, or read when the server starts. */
const NOT_BUILT = new Set(['lib/data/generated', 'lib/cli', 'prisma/demo', 'prisma/migrations'])
const QUIET = { NEXT_TELEMETRY_DISABLED: '1', CHECKPOINT_DISABLE: '1', PRISMA_HIDE_UPDATE_MESSAGE: '1' }

function checkNode() {
  const [major, minor] = process.versions.node.split('.').map(Number)
  if (major > NEEDED[0] || (major === NEEDED[0] && minor >= NEEDED[1])) return
  throw new Unready(
    `Emberslate needs Node ${NEEDED.join('.')} or newer and this is ${process.versions.node}. Install a newer Node, then try again.`,
  )
}

function checkFolder() {
  try {
    accessSync('.', constants.W_OK)
  } catch {
    throw new Unready(
      `The folder ${process.cwd()} cannot be written. Put Emberslate where you may write, then try again.`,
    )
  }
}

const read = (file) => (existsSync(file) ? readFileSync(file, 'utf8') : '')

function* filesUnder(name) {
  if (NOT_BUILT.has(name) || !existsSync(name)) return
  let entries
  try {
    entries = readdirSync(name, { withFileTypes: true })
  } catch {
    yield name
    return
  }
  const sorted = entries.sort((a, b) => (a.name < b.name ? -1 : 1))
  for (const entry of sorted) {
    const inside = `${name}/${entry.name}`
    if (entry.isDirectory()) yield* filesUnder(inside)
    else if (!NOT_BUILT.has(inside)) yield inside
  }
}

function hashOf(names) {
  const hash = createHash('sha256').update(process.versions.modules)
  for (const name of names) for (const file of filesUnder(name)) hash.update(`\0${file}\0`).update(readFileSync(file))
  return hash.digest('hex')
}

/** The types and the suites of npm test run side by side. */
const running = new Set()
/** A child that goes when we go: Ctrl-C reaches it through the terminal, any other end through `exit`. */
process.on('exit', () => {
  for (const child of running) child.kill()
})
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'])
  process.on(signal, () => {
    if (running.size > 0) process.exit(130)
  })

/** Runs a step to its end; its words are shown only if it fails, or if `loud`. */
export function run(command, args, { env = {}, loud = false } = {}) {
  return new Promise((resolve, reject) => {
    let said = ''
    const child = spawn(command, args, { env: { ...process.env, ...QUIET, ...env }, stdio: ['ignore', 'pipe', 'pipe'] })
    running.add(child)
    for (const stream of [child.stdout, child.stderr])
      stream.on('data', (bytes) => {
        said += bytes
        if (loud) process.stdout.write(bytes)
      })
    child.on('error', (fault) => {
      running.delete(child)
      reject(fault)
    })
    child.on('close', (code) => {
      running.delete(child)
      resolve({ code: code ?? 1, said })
    })
  })
}

async function step(sentence, command, args, whenItFails) {
  console.log(sentence)
  const { code, said } = await run(command, args)
  if (code === 0) return
  console.error(said.trimEnd())
  throw new Unready(whenItFails)
}

/** What is made of what: the stamp beside it says of which input. */
const MADE = {
  packages: { stamp: 'node_modules/.emberslate', made: 'node_modules', of: ['package-lock.json'] },
  'database client': {
    stamp: 'lib/data/generated/.emberslate',
    made: 'lib/data/generated/client.ts',
    of: ['prisma/schema.prisma', 'package-lock.json'],
  },
  build: { stamp: '.next/emberslate', made: '.next/BUILD_ID', of: [...SOURCES, ...MORE_SOURCES] },
}
const isDone = ({ stamp, made }, input) => existsSync(made) && read(stamp) === input
/** What the next start would make first. */
export const due = () => Object.keys(MADE).filter((name) => !isDone(MADE[name], hashOf(MADE[name].of)))

/** Does `work` unless it was done for the same input. */
async function unlessDone(name, work) {
  const { stamp, of } = MADE[name]
  const input = hashOf(of)
  if (isDone(MADE[name], input)) return
  rmSync(stamp, { force: true })
  await work()
  mkdirSync(path.dirname(stamp), { recursive: true })
  writeFileSync(stamp, input)
}

const npm = process.env.npm_execpath?.endsWith('.js') ? [process.execPath, process.env.npm_execpath] : ['npm']

const install = () =>
  step(
    'Installing packages (once) …',
    npm[0],
    [...npm.slice(1), 'ci', '--include=dev', '--no-audit', '--no-fund'],
    'The packages could not be installed. Check the connection to the npm registry, then try again.',
  )
const generate = () =>
  step(
    'Generating the database client …',
    process.execPath,
    ['node_modules/prisma/build/index.js', 'generate'],
    'The database client could not be generated from prisma/schema.prisma; the reason stands above.',
  )
const build = () =>
  step(
    'Building (once per change) …',
    process.execPath,
    ['node_modules/next/dist/bin/next', 'build'],
    'The build failed; the reason stands above.',
  )

export async function makeReady({ build: wanted }) {
  Object.assign(process.env, QUIET)
  checkNode()
  checkFolder()
  await unlessDone('packages', install)
  await unlessDone('database client', generate)
  if (wanted) await unlessDone('build', build)
}
