import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { CUTS } from '../../lib/model/cuts'
import { SOURCES } from '../../lib/model/sources'
import { GATES } from './gates'

const ROOT = new URL('../../', import.meta.url)
const textOf = (folder: string) =>
  readdirSync(new URL(folder, ROOT), { withFileTypes: true, recursive: true })
    .filter((f) => f.isFile() && /\.tsx?$/.test(f.name) && !f.name.startsWith('sources'))
    .map((f) => readFileSync(`${f.parentPath}/${f.name}`, 'utf8'))
    .join('\n')
const LIB = textOf('lib')
/** Ids in square brackets in comments: [choi-okos-1986]. They hold a hyphen, or are "estimate"; [a-z] of a pattern is none. */
const CITED = [...LIB.matchAll(/\[([a-z][a-z0-9]+(?:-[a-z0-9]+)+|estimate)\](?!\()/g)].map((m) => m[1] as string)
const inComment = (id: string) => LIB.split('\n').some((l) => l.includes(`[${id}]`) && /\/\/|\*/.test(l))

describe('the register of sources', () => {
  it('knows every id that a comment cites', () => {
    const unknown = [...new Set(CITED)].filter((id) => !(id in SOURCES) && inComment(id))
    expect(unknown).toEqual([])
  })
  it.each(Object.keys(SOURCES))('entry %s is used', (id) => {
    expect(LIB.includes(`[${id}]`) || LIB.includes(`'${id}'`)).toBe(true)
  })
  it('is named by both sources of every cut', () => {
    for (const cut of CUTS) expect([cut.compositionSource in SOURCES, cut.sizeSource in SOURCES]).toEqual([true, true])
  })
  it.each(Object.entries(GATES))('gate %s has a fixture that names its source', (_, gate) => {
    const text = readFileSync(new URL(`tests/fixtures/published/${gate.fixture}.json`, ROOT), 'utf8')
    expect(Object.keys(JSON.parse(text))).toContain('source')
  })
})
