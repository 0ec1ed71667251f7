import { readdirSync, readFileSync, statSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'

type Source = { readonly file: string; readonly text: string }

/** Each folder may import from folders of a lower number only. Equal numbers are siblings that do not know each other. */
const RANK: Record<string, number> = {
  units: 0,
  refusals: 0,
  model: 1,
  plan: 2,
  log: 3,
  day: 4,
  card: 4,
  wrap: 4,
  session: 5,
  export: 6,
  print: 7,
  data: 8,
  admin: 9,
  app: 9,
}
const PURE = new Set(['units', 'refusals', 'model', 'plan', 'log', 'day', 'card', 'wrap', 'session', 'export'])
/** The packages a folder may use, besides its own kind. What is not listed here is a decision to be written down first. */
const PACKAGES: Record<string, readonly string[]> = {
  plan: ['zod', 'temporal-polyfill'],
  card: ['zod'],
  log: ['zod', '@noble/hashes/sha2.js', '@noble/hashes/utils.js'],
  day: ['zod', 'temporal-polyfill', 'astronomy-engine'],
  export: ['uqr'],
  print: ['react', '@react-pdf/renderer'],
}
/** Packages that belong to one place of the shell. */
const ONLY_IN: readonly (readonly [RegExp, readonly string[]])[] = [
  [/^react(-dom)?(\/|$)/, ['app', 'print']],
  [/^next(\/|$)/, ['app', 'root']],
  [/^@react-pdf\//, ['print']],
  [/^(@prisma\/|@electric-sql\/|pglite-|pg$|pg-boss$)/, ['data', 'admin']],
]
const IMPURE: readonly (readonly [string, RegExp])[] = [
  ['the clock', /\bDate\.now\b|\bnew Date\(\s*\)|\bperformance\.now\b|\bTemporal\.Now\b/],
  ['chance', /\bMath\.random\b/],
  ['the environment', /\bprocess\.env\b/],
  ['the network', /\bfetch\s*\(/],
]

/** The part of the tree a file belongs to: "model", "units", "app", "cli", or "root" for files beside package.json. */
function partOf(file: string): string {
  const [first = '', second = ''] = file.split('/')
  if (first === 'app') return 'app'
  if (first !== 'lib') return 'root'
  return second.replace(/\.tsx?$/, '')
}

const withoutComments = (text: string) => text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^\s*\/\/.*$/gm, '')
const IMPORT = /(?:^(?:import|export)\b[^'"`;=]*?\bfrom\s+|^import\s+|\bimport\(\s*)['"]([^'"]+)['"]/gm

function importsOf({ file, text }: Source): string[] {
  return [...withoutComments(text).matchAll(IMPORT)].map(([, name = '']) => {
    if (name.startsWith('@/')) return name.slice(2)
    return name.startsWith('.') ? path.posix.join(path.posix.dirname(file), name) : name
  })
}
const isOurs = (name: string) => name.startsWith('lib/') || name.startsWith('app/') || name.startsWith('prisma/')

function offenceOf(file: string, name: string): string | undefined {
  const from = partOf(file)
  if (!isOurs(name)) return foreignOffence(from, name)
  const to = partOf(name)
  if (to === 'cli' && from !== 'cli') return `${to} is for the command line only`
  if (from === 'cli')
    return to === 'app' || to === 'data' || to === 'admin' ? `the command line does without ${to}` : undefined
  if (from === to || from === 'root') return undefined
  const [above, below] = [RANK[from], RANK[to]]
  if (above === undefined || (below === undefined && to !== 'root')) return 'a folder without a rank'
  return below !== undefined && below >= above ? `${from} must not know ${to}` : undefined
}

function foreignOffence(from: string, name: string): string | undefined {
  const owner = ONLY_IN.find(([pattern]) => pattern.test(name))
  if (owner && !owner[1].includes(from)) return `${name} belongs in ${owner[1].join(' and ')}`
  if (!PURE.has(from)) return undefined
  return (PACKAGES[from] ?? []).includes(name) ? undefined : `${from} may not use ${name}`
}

function impurities({ file, text }: Source): string[] {
  if (!PURE.has(partOf(file))) return []
  return IMPURE.filter(([, pattern]) => pattern.test(withoutComments(text))).map(([what]) => `${file}: reads ${what}`)
}

function environmentReaders({ file, text }: Source): string[] {
  const mayRead = file === 'lib/data/env.ts' || partOf(file) === 'cli' || partOf(file) === 'root'
  return !mayRead && /\bprocess\.env\b/.test(withoutComments(text)) ? [`${file}: reads the environment`] : []
}

/** Every broken arrow and every impurity, a line each. */
const offences = (sources: readonly Source[]) =>
  sources.flatMap((source) => [
    ...importsOf(source).flatMap((name) => {
      const offence = offenceOf(source.file, name)
      return offence ? [`${source.file} -> ${name}: ${offence}`] : []
    }),
    ...impurities(source),
    ...environmentReaders(source).filter(() => !PURE.has(partOf(source.file))),
  ])

function filesUnder(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const file = `${folder}/${name}`
    if (file === 'lib/data/generated') return []
    if (statSync(file).isDirectory()) return filesUnder(file)
    return /\.tsx?$/.test(name) ? [file] : []
  })
}
const sources = [...filesUnder('lib'), ...filesUnder('app'), 'proxy.ts', 'instrumentation.ts'].map((file) => ({
  file,
  text: readFileSync(file, 'utf8'),
}))

describe('architecture', () => {
  it('has no arrow that turns round and no impurity in a pure folder', () => {
    expect(sources.length).toBeGreaterThan(100)
    expect(offences(sources)).toEqual([])
  })

  const told = (file: string, text: string) => offences([{ file, text }])
  it.each([
    ['a lower folder that knows a higher one', 'lib/model/a.ts', "import { x } from '../plan/b'"],
    ['a sibling', 'lib/day/a.ts', "import type { X } from '../card/b'"],
    ['the alias', 'lib/export/a.ts', "import { x } from '@/lib/data/b'"],
    ['a side-effect import', 'lib/plan/a.ts', "import '../day/b'"],
    ['an import at run time', 'lib/plan/a.ts', "const x = await import('../day/b')"],
    ['a re-export', 'lib/units.ts', "export { x } from './model/b'"],
    ['an import over several lines', 'lib/card/a.ts', "import {\n  x,\n} from '../export/b'"],
    ['the command line on data', 'lib/cli/a.ts', "import { x } from '../data/b'"],
    ['a page on the command line', 'app/page.tsx', "import { x } from '@/lib/cli/b'"],
    ['a folder nobody has ranked', 'lib/helpers/a.ts', "import { x } from '../model/b'"],
    ['an unlisted package', 'lib/model/a.ts', "import x from 'zod'"],
    ['Node in a pure folder', 'lib/day/a.ts', "import { readFileSync } from 'node:fs'"],
    ['React below print', 'lib/export/a.tsx', "import { useState } from 'react'"],
    ['Prisma on a page', 'app/page.tsx', "import { Prisma } from '@prisma/client'"],
    ['the clock', 'lib/day/a.ts', 'const now = Date.now()'],
    ['the clock, as a date', 'lib/card/a.ts', 'const now = new Date()'],
    ['chance', 'lib/model/a.ts', 'const x = Math.random()'],
    ['the environment', 'lib/plan/a.ts', 'const x = process.env.HOME'],
    ['the environment on a page', 'app/page.tsx', 'const x = process.env.HOME'],
    ['the network', 'lib/export/a.ts', "await fetch('x')"],
  ])('sees %s', (_what, file, text) => {
    expect(told(file, text)).toHaveLength(1)
  })

  it.each([
    ['the plan on the model', 'lib/plan/a.ts', "import { x } from '../model/b'"],
    ['a page on data', 'app/page.tsx', "import { x } from '@/lib/data/b'"],
    ['a comment', 'lib/model/a.ts', "// import { x } from '../plan/b'\n/* Date.now() */"],
    ['a date from a number', 'lib/export/a.ts', 'const day = new Date(0)'],
  ])('lets pass %s', (_what, file, text) => {
    expect(told(file, text)).toEqual([])
  })
})
