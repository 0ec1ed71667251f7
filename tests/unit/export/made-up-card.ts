import { readFileSync } from 'node:fs'
import { buildCard, checkCard } from '../../../lib/card/card'
import { type CardModel, cardModel } from '../../../lib/export/card'
import type { Published } from '../../../lib/export/published'
import { parseShoot } from '../../../lib/plan/parse'
import { seconds } from '../../../lib/units'
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
