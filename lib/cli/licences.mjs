/** `npm run licences`: which licences everything that runs with us is under, as the file that the app serves at /licences.txt. Plain Node. */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { fileURLToPath } from 'node:url'

const FILE = 'public/licences.txt'
/** Licences that ask for their notice at most (OFL: that a font is not sold alone; CC-BY: that its maker is named). */
const OPEN = new Set([
  'MIT',
  'ISC',
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  '0BSD',
  'BlueOak-1.0.0',
  'Unlicense',
  'CC0-1.0',
  'OFL-1.1',
  'CC-BY-4.0',
])
/** Licences that ask more, each with the package that may have it and why it asks nothing of us here. */
const EXCEPTIONS = [
  ['MPL-2.0', /^@resvg\/resvg-wasm$/, 'used as it comes; its source is public'],
  ['MPL-2.0', /^(axe-core|ical\.js|lightningcss(-.+)?)$/, 'for tests and build alone, used as they come'],
  ['LGPL-3.0-or-later', /^@img\/sharp-/, 'optional to Next, a library of its own, and never called by us'],
  ['EPL-2.0', /^elkjs$/, 'in the studio of the prisma command, which is never started and not served'],
]
/** What the lock file does not say, read in the package's own LICENSE. */
const READ_BY_US = { 'png-js': 'MIT', 'seq-queue': 'MIT', '@visx/vendor': 'MIT AND ISC' }

const read = (file) => JSON.parse(readFileSync(file, 'utf8'))

/** Every package of the lock file, by the place where it is installed. */
export function lockedPackages(lock = read('package-lock.json')) {
  return Object.entries(lock.packages)
    .filter(([place]) => place !== '')
    .map(([place, entry]) => {
      const name = place.slice(place.lastIndexOf('node_modules/') + 'node_modules/'.length)
      return { place, name, ...entry, licence: READ_BY_US[name] ?? entry.license ?? '' }
    })
}

function mayBe(name, licence) {
  return OPEN.has(licence) || EXCEPTIONS.some(([one, who]) => one === licence && who.test(name))
}

/** SPDX: of those joined by OR one must do, of those joined by AND all. */
export function isAllowed(name, expression) {
  const words = expression.replace(/^\((.*)\)$/, '$1')
  if (words.includes(' OR ')) return words.split(' OR ').some((one) => isAllowed(name, one))
  return words.split(' AND ').every((one) => mayBe(name, one.trim()))
}

/** A line for each package whose licence nobody has looked at. */
export const refusedLicences = (packages = lockedPackages()) =>
  packages
    .filter(({ name, licence }) => !isAllowed(name, licence))
    .map(({ place, licence }) => `${place}: ${licence || 'no licence said'}`)

/** The same text on every machine: line ends and blank edges differ between packages. */
const tidy = (text) =>
  text
    .replace(/\r\n?/g, '\n')
    .replace(/[ \t]+$/gm, '')
    .replace(/^\uFEFF?\s*\n/, '')
    .trim()

function noticeOf(place) {
  if (!existsSync(place)) return ''
  const names = readdirSync(place).filter((name) => /^(licen[cs]e|copying|notice)([.-].*)?$/i.test(name))
  const texts = names.filter((name) => !/\.(js|ts|json)$/i.test(name)).sort()
  return texts.map((name) => tidy(readFileSync(path.join(place, name), 'utf8'))).join('\n\n')
}

/** For one kind of machine alone: npm installs them where they fit, so their texts are not the same everywhere. */
const isOfOneMachine = ({ os, cpu, libc }) => Boolean(os || cpu || libc)

const RULE = '='.repeat(78)
const HEAD = `Emberslate is under the MIT licence. It runs with the packages below, each used as
it comes, under the licence of its makers. Made by: npm run licences
`

/** The whole file: each package with its licence, and each licence text once, with those that have it. */
export function notices(packages = lockedPackages()) {
  const running = packages.filter(({ dev }) => !dev)
  const lines = [...new Set(running.map(({ name, version, licence }) => `${name} ${version}: ${licence}`))].sort()
  const byText = new Map()
  for (const one of running.filter((each) => !isOfOneMachine(each))) {
    const text = noticeOf(one.place)
    if (text) byText.set(text, [...(byText.get(text) ?? []), `${one.name} ${one.version}`])
  }
  const parts = [...byText].map(([text, names]) => [[...new Set(names)].sort().join('\n'), text])
  parts.sort(([a], [b]) => (a < b ? -1 : 1))
  const texts = parts.map(([names, text]) => `${RULE}\n${names}\n\n${text}\n`)
  return `${HEAD}\n${lines.join('\n')}\n\n${texts.join('\n')}`
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const refused = refusedLicences()
  for (const line of refused)
    console.error(`${line}. Look at it, then list it in lib/cli/licences.mjs or do without it.`)
  writeFileSync(FILE, notices())
  console.log(`${FILE} is written.`)
  process.exitCode = refused.length > 0 ? 1 : 0
}
