import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

const read = (path: string) => readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8')
const PAGE = read('app/look/tokens.css')
const BOARD = [
  ...readdirSync(new URL('../../../app/set/look', import.meta.url)).map((name) => `app/set/look/${name}`),
  'app/set/photos/photos.css',
  'app/set/rehearsal/rehearsal.css',
].map(read)

function groundOf(name: string): ReadonlyMap<string, string> {
  const block = PAGE.match(new RegExp(`@utility ground-${name} \\{([^}]+)\\}`))?.[1] ?? ''
  return new Map(
    [...block.matchAll(/--([\w-]+): (#[0-9a-f]+);/g)].map(([, token, value]) => [token ?? '', value ?? '']),
  )
}
/** Relative luminance and ratio as WCAG 2.2 defines them ("relative luminance", "contrast ratio"). */
function luminance(hex: string): number {
  const digits = hex.length === 4 ? [...hex.slice(1)].map((d) => d + d) : (hex.slice(1).match(/../g) ?? [])
  const [r = 0, g = 0, b = 0] = digits.map((pair) => {
    const share = Number.parseInt(pair, 16) / 255
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}
function contrast(a: string, b: string): number {
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x)
  return (light + 0.05) / (dark + 0.05)
}

describe.each(['day', 'dusk', 'grey'])('the tokens by %s', (name) => {
  const ground = groundOf(name)
  const on = (paper: string, token: string) => contrast(ground.get(paper) ?? '', ground.get(token) ?? '')

  it('are the ten that the other grounds have', () => {
    expect([...ground.keys()]).toEqual('paper leaf band ink ink-2 ink-3 edge rule ember cool'.split(' '))
  })
  it('let text be read in the sun: 7 to 1 on paper', () => {
    for (const token of ['ink', 'ink-2', 'ember', 'cool']) expect(on('paper', token), token).toBeGreaterThanOrEqual(7)
  })
  it('keep what is past readable on a laptop, and what can be pressed visible', () => {
    expect(on('paper', 'ink-3')).toBeGreaterThanOrEqual(4.5)
    expect(on('paper', 'edge')).toBeGreaterThanOrEqual(3)
  })
  it('keep text 7 to 1 on the grounds that text stands on', () => {
    for (const paper of ['leaf', 'band']) expect(on(paper, 'ink'), paper).toBeGreaterThanOrEqual(7)
  })
})

describe('the set board', () => {
  it('writes in no colour below 7 to 1, and none of its own', () => {
    for (const css of BOARD) {
      const inks = [...css.matchAll(/(?<![\w-])(?:color|fill): ([^;]+);/g)].map(([, value]) => value ?? '')
      const ours = ['ink', 'ink-2', 'ember', 'cool', 'paper', 'band', 'leaf'].map((token) => `var(--${token})`)
      expect(inks.filter((ink) => ![...ours, 'inherit', 'none'].includes(ink))).toEqual([])
      expect(css.match(/#[0-9a-f]{3,6}\b/gi) ?? []).toEqual([])
    }
  })
})
