import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'

const { scripts, dependencies, devDependencies } = JSON.parse(readFileSync('package.json', 'utf8'))
const BUILT_IN = new Set(['start', 'test'])
/** Made when the app runs, so not in a fresh clone; and the placeholder in "how to add". */
const MADE_LATER = new Set(['card.pdf', '.data', 'tests/proofs/NAME.ts'])

const codeOf = (text: string) => [
  ...[...text.matchAll(/`([^`\n]+)`/g)].map(([, code = '']) => code),
  ...text
    .split('\n')
    .filter((line) => /^ {4}\S/.test(line))
    .map((line) => line.trim()),
]
const looksLikePath = (word: string) => /^\.?[a-zA-Z][\w.-]*(\/[\w.[\]-]+)+\/?$|^[\w-]+\.(md|mjs|ts|json)$/.test(word)

/** Commands whose script or package does not exist, and paths where nothing is, from the top or from the document's folder. */
function untrue(text: string, folder = '.'): string[] {
  return codeOf(text).flatMap((code) => {
    const [command = '', ...words] = code.split(/\s+/)
    const script = command === 'npm' ? words.find((word) => word !== 'run' && !word.startsWith('-')) : undefined
    const wrong: string[] = []
    if (script && !(script in scripts) && !BUILT_IN.has(script)) wrong.push(code)
    if (command === 'npx' && !existsSync(`node_modules/.bin/${words[0]}`)) wrong.push(code)
    const paths = [command, ...words].filter((word) => looksLikePath(word) && !MADE_LATER.has(word))
    return [
      ...wrong,
      ...paths.filter(
        (word) =>
          !existsSync(word) &&
          !existsSync(path.join(folder, word)) &&
          !(word in { ...dependencies, ...devDependencies }),
      ),
    ]
  })
}

describe('documents', () => {
  it.each(
    ['README.md', 'DEVELOPERS.md', 'lib/model/README.md', 'lib/day/README.md', 'lib/plan/README.md'].filter((file) =>
      existsSync(file),
    ),
  )('%s names only commands and paths that exist', (file) => {
    const text = readFileSync(file, 'utf8')
    expect(codeOf(text).length).toBeGreaterThan(0)
    expect(untrue(text, path.dirname(file))).toEqual([])
  })
  it('the check sees a command and a path that do not exist', () => {
    expect(untrue('Run `npm run bake`, `npx oven` and see `lib/model/nowhere.ts`.')).toHaveLength(3)
  })
  it('README opens with what it does, and npm start', () => {
    const text = readFileSync('README.md', 'utf8')
    expect(text.indexOf('npm start')).toBeLessThan(900)
    expect(text.indexOf('npm test')).toBeGreaterThan(text.indexOf('npm start'))
  })
})
