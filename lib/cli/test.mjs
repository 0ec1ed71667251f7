/**
 * `npm test`: makes ready what is missing, then runs every check; the last line counts all of them together. With
 * `--server` the suite of the data runs on a PostgreSQL of its own too.
 */
import { spawn } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'
import { makeReady, run, Unready } from './make-ready.mjs'

const node = (script, ...args) => run(process.execPath, [`node_modules/${script}`, ...args])
const KINDS = ['unit', 'laws', 'reference', 'data', 'web', 'other']

const total = { passed: 0, failed: 0 }
const seconds = (since) => `${((Date.now() - since) / 1000).toFixed(0)} s`

function count(name, passed, failed, since) {
  total.passed += passed
  total.failed += failed
  console.log(
    `${failed > 0 ? 'FAILED' : 'ok    '} ${name}: ${passed} passed, ${failed} failed${since ? ` (${seconds(since)})` : ''}`,
  )
}

/** A check with one verdict; what it said is shown only if it failed. */
async function check(name, ...steps) {
  const since = Date.now()
  for (const step of steps) {
    const { code, said } = await step()
    if (code === 0) continue
    console.log(said.trimEnd())
    return count(name, 0, 1, since)
  }
  count(name, 1, 0, since)
}

async function ready() {
  try {
    await makeReady({ build: true })
    return true
  } catch (fault) {
    console.error(fault instanceof Unready ? fault.message : fault)
    return false
  }
}

/** Starts a PostgreSQL that ends with us, and tells the suites where it is. */
async function startServer() {
  const since = Date.now()
  const child = spawn(process.execPath, ['--import=tsx', 'tests/postgres-beside.ts'], {
    stdio: ['pipe', 'pipe', 'inherit'],
  })
  const gone = new Promise((resolve) => child.once('close', resolve))
  const said = new Promise((resolve) => createInterface(child.stdout).once('line', resolve))
  const url = await Promise.race([said, gone.then(() => '')])
  count('postgresql', url ? 1 : 0, url ? 0 : 1, since)
  if (url) process.env.EMBERSLATE_TEST_SERVER = url
  return () => {
    child.stdin.end()
    return gone
  }
}

const kindOf = (file) => {
  const folder = path.relative('tests', file).split(path.sep)[0]
  return KINDS.includes(folder) ? folder : 'other'
}

/** A failure without the test runner's own part of the stack. */
const ours = (message) =>
  message
    .split('\n')
    .filter((line) => !/^\s+at .*(node_modules|node:internal)/.test(line))
    .join('\n')

function tell({ name, assertionResults, message }) {
  const file = path.relative('.', name)
  if (assertionResults.length === 0) console.log(`\n${file}\n${message}`)
  for (const { status, fullName, failureMessages } of assertionResults)
    if (status === 'failed') console.log(`\n${file} > ${fullName}\n${failureMessages.map(ours).join('\n')}`)
}

/** A file that does not even load, and a test that is skipped, count as failed: nothing vanishes. */
const tally = ({ assertionResults }) => ({
  passed: assertionResults.filter((one) => one.status === 'passed').length,
  failed: assertionResults.filter((one) => one.status !== 'passed').length || (assertionResults.length === 0 ? 1 : 0),
})

/** Where the time goes: the whole must end within 8 minutes. */
function tellSlowest(results) {
  const took = ({ startTime, endTime }) => (endTime - startTime) / 1000
  const slowest = [...results].sort((a, b) => took(b) - took(a)).slice(0, 8)
  console.log(
    `slowest: ${slowest.map((one) => `${path.relative('tests', one.name)} ${took(one).toFixed(0)} s`).join(', ')}`,
  )
}

async function suites() {
  const folder = mkdtempSync(path.join(tmpdir(), 'emberslate-test-'))
  const report = path.join(folder, 'report.json')
  const args = ['run', '--config', 'tests/vitest.config.mjs', '--reporter=json', `--outputFile=${report}`]
  const { said } = await node('vitest/vitest.mjs', ...args)
  let results
  try {
    results = JSON.parse(readFileSync(report, 'utf8')).testResults
  } catch {
    console.log(said.trimEnd())
    return count('vitest', 0, 1)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
  results.forEach(tell)
  tellSlowest(results)
  for (const kind of KINDS) {
    const sums = results.filter((file) => kindOf(file.name) === kind).map(tally)
    const sum = (key) => sums.reduce((all, one) => all + one[key], 0)
    if (sums.length > 0) count(kind, sum('passed'), sum('failed'))
  }
}

process.chdir(fileURLToPath(new URL('../..', import.meta.url)))
const since = Date.now()
if (await ready()) {
  count('build', 1, 0, since)
  await check('lint', () => run(process.execPath, ['node_modules/@biomejs/biome/bin/biome', 'check', '.']))
  // The compiler has one core and the suites share both: neither waits for the other.
  const types = check(
    'types',
    () => node('next/dist/bin/next', 'typegen'),
    () => node('typescript/bin/tsc', '--noEmit'),
  )
  const stopServer = process.argv.includes('--server') ? await startServer() : () => {}
  await Promise.all([types, suites()])
  await stopServer()
} else count('build', 0, 1, since)
console.log(`${total.passed} passed, ${total.failed} failed`)
process.exit(total.failed > 0 ? 1 : 0)
