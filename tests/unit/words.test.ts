import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { GLOSSARY, meaningOf } from '../../app/words/glossary'
import { textsIn } from './texts-in-code'
import { STILL_TO_MOVE } from './words-still-to-move'

/** What programs read: the API's own descriptions, and stores whose texts only other code meets. */
const NO_SCREENS = /^app\/(api|words)\/|^app\/set\/feed\/[^/]*\.ts$|photo-(store|queue)\.ts$|\/route\.ts$/
const screens = readdirSync('app', { recursive: true, encoding: 'utf8' })
  .map((name) => `app/${name}`)
  .filter((file) => /\.tsx?$/.test(file) && !NO_SCREENS.test(file))
  .sort()

describe('the texts of the screens', () => {
  it('stand in app/words and nowhere else', () => {
    const strays = screens
      .filter((file) => !STILL_TO_MOVE.includes(file))
      .flatMap((file) => textsIn(file, readFileSync(file, 'utf8')).map(({ line, text }) => `${file}:${line} ${text}`))
    expect(strays).toEqual([])
  })

  it('leaves no file on the list whose texts have moved', () => {
    const moved = STILL_TO_MOVE.filter(
      (file) => !existsSync(file) || textsIn(file, readFileSync(file, 'utf8')).length === 0,
    )
    expect(moved).toEqual([])
  })

  it('sees a text wherever one can hide, and takes no class or key for one', () => {
    const code = `
      const NOTE = 'Nothing was noted yet.'
      const FIELD = { key: 'call', label: 'Call' }
      export const A = () => <p className="small text" title={late ? 'Late' : undefined}>
        Roll {n > 1 && 'now'} {\`take \${n}\`} {shorten('long', 3)} {'·'}
      </p>`
    expect(textsIn('a.tsx', code).map(({ text }) => text)).toEqual([
      'Nothing was noted yet.',
      'Call',
      'Late',
      'Roll',
      'now',
      'take …',
    ])
  })
})

describe('the glossary', () => {
  const says = GLOSSARY.map((entry) => entry.says)

  it('has each word once and one short sentence for it', () => {
    expect(new Set(GLOSSARY.map(({ term }) => term)).size).toBe(GLOSSARY.length)
    expect(
      says.filter((text) => text.length > 125 || !/^\p{L}.*[^.]\.$/u.test(text) || /\. \p{Lu}/u.test(text)),
    ).toEqual([])
    expect(meaningOf('carryover')).toMatch(/core still rises/)
  })

  it('neither shouts, nor begs, nor praises', () => {
    expect(says.filter((text) => /!|please|sorry|great job|simply|just /i.test(text))).toEqual([])
  })
})
