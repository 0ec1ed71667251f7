import { readFileSync } from 'node:fs'
import { constants, inflateSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { buildCard, checkCard } from '../../../lib/card/card'
import { type CardModel, cardModel } from '../../../lib/export/card'
import { parseShoot } from '../../../lib/plan/parse'
import { printCard, sheetsIn } from '../../../lib/print/render'
import { madeUpForecast } from '../card/made-up-forecast'

type Document = Record<string, unknown>
const lamb = JSON.parse(readFileSync('prisma/demo/leg-of-lamb.json', 'utf8')) as Document
function modelOf(card: Document = {}): CardModel {
  const read = parseShoot({ ...lamb, card: { ...(lamb.card as Document), ...card } })
  if (!read.ok) throw new RangeError(read.problems.map((p) => p.sentence).join('\n'))
  const forecast = madeUpForecast()
  const forecasts = new Map([['hero', forecast]])
  const built = buildCard(read.value, forecasts)
  return cardModel(built, checkCard(built, forecasts), { forecast, date: '15 May 2027' })
}

/** The characters a PDF maps its glyphs to, from the ToUnicode tables of its fonts. */
function charactersIn(bytes: Uint8Array): Set<string> {
  const text = Buffer.from(bytes).toString('latin1')
  const found = new Set<string>()
  for (const m of text.matchAll(/stream\r?\n([\s\S]*?)\r?\nendstream/g)) {
    let table = ''
    try {
      table = inflateSync(Buffer.from(m[1] ?? '', 'latin1'), { finishFlush: constants.Z_SYNC_FLUSH }).toString('latin1')
    } catch {
      continue
    }
    if (!table.includes('beginbfrange') && !table.includes('beginbfchar')) continue
    for (const hex of table.matchAll(/<([0-9a-f]{4})>/gi))
      found.add(String.fromCodePoint(Number.parseInt(hex[1] ?? '0', 16)))
  }
  return found
}
const long = (n: number, words: string) => Array.from({ length: n }, (_, i) => ({ id: `more-${i}`, text: words }))

describe.each(['A4', 'Letter'] as const)('the card on %s', (paper) => {
  it('stands on one sheet, the same bytes each time', async () => {
    const [once, again] = [await printCard(modelOf(), paper), await printCard(modelOf(), paper)]
    expect(sheetsIn(once)).toBe(1)
    expect(Buffer.from(once).equals(Buffer.from(again))).toBe(true)
  })

  it('stands on one sheet with long words too', async () => {
    const words =
      'Baste it with what has gathered below, and listen to it while the smoke turns thin and blue. '.repeat(3)
    const bytes = await printCard(modelOf({ steps: long(8, words.trim()) }), paper)
    expect(sheetsIn(bytes)).toBe(1)
  })

  it('where even small type does not hold it, the last steps go and a sentence says so', async () => {
    const words =
      'Baste it with what has gathered below, and listen to it while the smoke turns thin and blue. '.repeat(6)
    const bytes = await printCard(modelOf({ steps: long(40, words.trim()) }), paper)
    expect(sheetsIn(bytes)).toBe(1)
  })
})

describe('letters on paper', () => {
  it('extended Latin comes from the second half of each face', async () => {
    const bytes = await printCard(modelOf({ title: 'Gyulai őszi łosoś', intro: 'Žluťoučký kůň, ğ ş.' }), 'A4')
    const held = charactersIn(bytes)
    expect([...'őłśŽťčůňğş'].filter((c) => !held.has(c))).toEqual([])
  })
})

describe('the card as values', () => {
  it('a number and its unit stand on one line', () => {
    const text = modelOf()
      .steps.flatMap((s) => s.runs.map((r) => r.text))
      .join('')
    expect(text).toContain('150\u00a0°C\u00a0/\u00a0300\u00a0°F')
    expect(text).not.toMatch(/\d °/)
  })
  it('a weight changes only between words', () => {
    for (const step of modelOf().steps)
      step.runs.slice(1).forEach((run, i) => {
        expect(`${step.runs[i]?.text.at(-1)}${run.text[0]}`).toMatch(/\s/)
      })
  })
  it('the foot counts what is printed, and owns up to what is printed against the check', () => {
    const own = modelOf({
      steps: [
        {
          id: 'x',
          text: 'It takes an hour in all.',
          override: [{ sentence: 'It takes an hour in all.', reason: 'It did on the day.' }],
        },
      ],
    })
    expect(own.foot).toMatch(
      /^Every time and temperature here was checked against the thermal model \(version made-up\): .*borne out/,
    )
    expect(own.foot).toContain('one contradicted and printed as the author’s own')
    const dropped = modelOf({ steps: [{ id: 'x', text: 'It takes an hour in all.' }] })
    expect(dropped.foot).not.toContain('contradicted')
    expect(JSON.stringify(dropped)).not.toContain('an hour in all')
  })
  it('amounts come in both unit systems, metric first', () => {
    const rows = modelOf({
      ingredients: [
        { what: 'mint', much: '40 g' },
        { what: 'sugar', much: '2 lb' },
        { what: 'garlic', much: '6 cloves' },
        { what: 'salt', much: '45 g (3 tbsp)' },
      ],
    }).ingredients
    expect(rows.map((r) => [r.much, r.other])).toEqual([
      ['3.2 kg', '7.1 lb'],
      ['40 g', '1½ oz'],
      ['905 g', '2 lb'],
      ['6 cloves', ''],
      ['45 g', '3 tbsp'],
    ])
  })
  it('a title that the check contradicts gives way to the cut', () => {
    expect(modelOf({ title: 'Lamb in an hour in all' }).title).toBe('Leg of lamb, bone in')
  })
})
