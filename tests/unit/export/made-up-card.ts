import { readFileSync } from 'node:fs'
import { buildCard, checkCard } from '../../../lib/card/card'
import { type CardModel, cardModel } from '../../../lib/export/card'
import type { Published } from '../../../lib/export/published'
import { parseShoot } from '../../../lib/plan/parse'
import { frac, metres, seconds } from '../../../lib/units'
import { madeUpForecast } from '../card/made-up-forecast'

type Document = Record<string, unknown>
const lamb = JSON.parse(readFileSync('prisma/demo/leg-of-lamb.json', 'utf8')) as Document

export const PUBLISHED: Published = {
  at: 'https://example.com/leg-of-lamb',
  author: 'Zoë Łukasik',
  image: 'https://example.com/leg-of-lamb.jpg',
  video: {
    url: 'https://example.com/film',
    title: 'Leg of lamb, start to slice',
    uploaded: '2027-06-01',
    length: seconds(750),
  },
  keywords: 'lamb, charcoal ,spring,',
  cuisine: 'Irish',
  category: 'Main course',
}

const made = new Map<string, CardModel>()
/** The demo's card with other words, from a forecast of round numbers. */
export function modelOf(card: Document = {}, published?: Published): CardModel {
  const asked = JSON.stringify([card, published])
  const known = made.get(asked) ?? make(card, published)
  made.set(asked, known)
  return known
}
function make(card: Document, published?: Published): CardModel {
  const read = parseShoot({ ...lamb, card: { ...(lamb.card as Document), ...card } })
  if (!read.ok) throw new RangeError(read.problems.map((p) => p.sentence).join('\n'))
  const forecast = madeUpForecast()
  const forecasts = new Map([['hero', forecast]])
  const built = buildCard(read.value, forecasts)
  return cardModel(built, checkCard(built, forecasts), { forecast, date: '15 May 2027', published })
}

const window = {
  early: seconds(7500),
  likely: seconds(9300),
  late: seconds(11400),
  q10: null,
  q90: null,
  reached: frac(1),
}
/** Times for other sizes as they are printed, without a forecast of each. */
export const MADE_UP_SIZES: NonNullable<CardModel['sizes']> = {
  caption: 'From the meat going on until the probe reads 46 °C / 115 °F',
  columns: [
    { kind: 'kettle-charcoal', words: 'charcoal kettle' },
    { kind: 'oven', words: 'oven' },
    { kind: 'convection-oven', words: 'convection oven' },
  ],
  rows: [0.1, 0.11, 0.12, 0.13, 0.14].map((thick) => ({
    thickness: metres(thick),
    thick: `${Math.round(thick * 100)} cm / ${Math.round((thick / 0.0254) * 4) / 4} in`,
    weight: 'about 3.2 kg / 7.1 lb',
    filmed: thick === 0.12,
    cells: ['2 h 05 to 3 h 10', '2 h 10 to 2 h 50', '1 h 55 to 2 h 35'].map((words, i) => ({
      window,
      words,
      likely: '2 h 35',
      filmed: thick === 0.12 && i === 0,
    })),
  })),
  note: 'Nine cooks in ten fall between the two times. Thickness decides, weight hardly: go by the probe.',
}
