import { readdirSync, readFileSync, statSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { GUIDES } from '../../app/words/help'
import { SHOTS } from '../pictures/shots'

const FOLDER = 'public/help'
const MOST_BYTES = 1_500_000
const manifest = JSON.parse(readFileSync('app/help/pictures.json', 'utf8')) as Record<string, { shows: string }>
const readme = readFileSync('README.md', 'utf8')
const { scripts } = JSON.parse(readFileSync('package.json', 'utf8')) as { scripts: Record<string, string> }

const shown = GUIDES.flatMap(({ steps }) => steps.flatMap(({ picture }) => picture ?? []))
const names = shown.map(({ name }) => name).sort()
const sentences = GUIDES.flatMap(({ steps, wrong }) => [
  ...steps.map(({ says }) => says),
  ...wrong.map(({ todo }) => todo),
])

/** All that the screens can say, and what the core gives them to say. */
const sourceUnder = (folder: string): string =>
  readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter(
      (entry) =>
        entry.isFile() && /\.tsx?$/.test(entry.name) && !/guides|help\.ts/.test(`${entry.parentPath}/${entry.name}`),
    )
    .map((entry) => readFileSync(path.join(entry.parentPath, entry.name), 'utf8'))
    .join('\n')

describe('the guides', () => {
  it('show each picture that is taken once, and no other', () => {
    expect(SHOTS.map(({ name }) => name).sort()).toEqual(names)
    expect(Object.keys(manifest).sort()).toEqual(names)
    expect(readdirSync(FOLDER).sort()).toEqual(names.map((name) => `${name}.webp`))
  })
  it('say of each picture what is seen', () => {
    expect(shown.filter(({ alt }) => alt.length < 40)).toEqual([])
  })
  it('have pictures that a slow line brings soon', () => {
    const bytes = readdirSync(FOLDER).map((file) => statSync(path.join(FOLDER, file)).size)
    expect(bytes.reduce((a, b) => a + b, 0)).toBeLessThan(MOST_BYTES)
  })
  it('stand in README with their pictures', () => {
    const missing = [
      ...GUIDES.map(({ title }) => `### ${title}`),
      ...names.map((name) => `${FOLDER}/${name}.webp`),
    ].filter((words) => !readme.includes(words))
    expect(missing).toEqual([])
  })
  it('name what is pressed as the screens do', () => {
    const source = sourceUnder('app')
    const pressed = sentences.flatMap((text) => [...text.matchAll(/\[([^\]]+)\]/g)].map(([, name = '']) => name))
    expect(pressed.length).toBeGreaterThan(20)
    const bare = (name: string) => name.replace(/\d+ (readings )?/, '').replace(/ back$| into the log$/, '')
    expect(pressed.filter((name) => !source.includes(bare(name)))).toEqual([])
  })
  it('give commands that are there', () => {
    const typed = GUIDES.flatMap(({ steps }) => steps.flatMap(({ type = [] }) => type))
    const run = typed.flatMap((line) => [...line.matchAll(/npm (?:run )?([a-z]+)/g)].map(([, name = '']) => name))
    expect(run.length).toBeGreaterThan(4)
    expect(run.filter((name) => !(name in scripts))).toEqual([])
  })
  it('are five to nine steps long', () => {
    expect(GUIDES.filter(({ steps }) => steps.length < 5 || steps.length > 9)).toEqual([])
  })
})
