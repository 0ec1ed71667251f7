import { readdirSync, readFileSync } from 'node:fs'
import { create, type Font } from 'fontkit'
import { describe, expect, test } from 'vitest'
import { PRINTABLE, unprintable } from '../../../lib/plan/printable'

const FACES = ['vollkorn', 'sofia-sans-condensed', 'sofia-sans-semi-condensed']
const SETTERS = [0x0a]

/** What a face holds in its latin and latin-ext files of one weight together. */
function heldBy(face: string, cut: string): Set<number> {
  const folder = new URL(`../../../node_modules/@fontsource/${face}/files/`, import.meta.url)
  const files = readdirSync(folder).filter(
    (name) => name === `${face}-latin-${cut}.woff` || name === `${face}-latin-ext-${cut}.woff`,
  )
  expect(files).toHaveLength(2)
  return new Set(files.flatMap((name) => (create(readFileSync(new URL(name, folder))) as Font).characterSet))
}

describe('unprintable', () => {
  test.each(
    FACES.flatMap((face) => [
      `${face} 400-normal`,
      `${face} 700-normal`,
      ...(face === 'vollkorn' ? ['vollkorn 400-italic', 'vollkorn 600-normal'] : []),
    ]),
  )('every character it lets through is in %s', (name) => {
    const [face, cut] = name.split(' ') as [string, string]
    const held = heldBy(face, cut)
    const missing = PRINTABLE.flatMap(([from, to]) =>
      Array.from({ length: to - from + 1 }, (_, i) => from + i).filter(
        (point) => !held.has(point) && !SETTERS.includes(point),
      ),
    )
    expect(missing.map((point) => `U+${point.toString(16)}`)).toEqual([])
  })
  test.each([
    'Leg of lamb, 3.2 kg (7 lb)',
    'Crème brûlée, Żurek, œufs, Ærø, Straße',
    '150 °C – “slow”, ½ cup … €5',
    '',
  ])('%s can be printed', (text) => expect(unprintable(text)).toBeNull())
  test.each([
    ['羊', '"羊" (U+7F8A)'],
    ['ok 🍖', '"🍖" (U+1F356)'],
    ['Ω', '"Ω" (U+03A9)'],
    ['Жар', '"Ж" (U+0416)'],
    ['a\tb', 'The character U+0009'],
    ['a\u200bb', 'The character U+200B'],
    ['\ud800', 'The character U+D800'],
    ['✓', '"✓" (U+2713)'],
  ])('%j is named', (text, named) => expect(unprintable(text)).toMatch(`${named} is not in the printed letters.`))
})
