import type { Rain } from '../model/cook'
import { celsius, formatTemp } from '../units'
import { CLOCK, laterClock, minutesUntil } from './clock-text'
import { surroundingsOf } from './cook-plan'
import { setAt, valueAt } from './edit'
import type { Shoot, ShootDocument } from './shoot'
import { listAt } from './sketch'

/** A change of the day that somebody weighs: what would it do? Quantities as a person writes them. */
export type DayChange =
  | { readonly kind: 'crew-late'; readonly minutes: number }
  | { readonly kind: 'weather'; readonly air?: string; readonly wind?: string; readonly rain?: Rain }
  | {
      readonly kind: 'hold'
      readonly in: HoldPlace
      readonly for: string
      readonly at?: string
      readonly cook?: string
    }
export type HoldPlace = 'cooker' | 'oven' | 'box'

/** Warm enough to stay hot, too cool to cook on fast; common practice, no source. */
const HOLD_AT = '65 °C'

/** `call`: when the crew is called today, "14:00". The document as it would be saved. */
export function withChange(document: ShootDocument, change: DayChange, call: string): ShootDocument {
  if (change.kind === 'crew-late') return calledLater(document, call, laterClock(call, change.minutes))
  if (change.kind === 'hold') return held(document, change)
  const aired = change.air === undefined ? document : setAt(document, '/weather/air', change.air)
  const blown = change.wind === undefined ? aired : setAt(aired, '/weather/wind', change.wind)
  return change.rain === undefined ? blown : setAt(blown, '/weather/rain', change.rain)
}

/** What begins with the call, or before the crew can be there, begins with the new call. */
function calledLater(document: ShootDocument, call: string, later: string): ShootDocument {
  const soonest = minutesUntil(call, later)
  const tooSoon = (edge: unknown) => typeof edge === 'string' && CLOCK.test(edge) && minutesUntil(call, edge) < soonest
  const begins = [
    ...listAt(document, '/shots').flatMap((_, i) => [`/shots/${i}/from`, `/shots/${i}/between/0`]),
    ...listAt(document, '/tasks').map((_, i) => `/tasks/${i}/from`),
  ]
  return begins
    .filter((pointer) => tooSoon(valueAt(document, pointer)))
    .reduce((d, pointer) => setAt(d, pointer, later), setAt(document, '/day/call', later))
}

type HoldChange = Extract<DayChange, { kind: 'hold' }>
type StageDocument = { readonly do: string; readonly in?: string }
/** Choking the fire comes before the rest, a warm oven or a box after it; a hold there already is made as long. */
function held(document: ShootDocument, { in: place, for: time, at = HOLD_AT, cook }: HoldChange): ShootDocument {
  const cooks = (valueAt(document, '/cooks') as readonly { readonly id: string }[] | undefined) ?? []
  const index = Math.max(
    0,
    cooks.findIndex(({ id }) => id === cook),
  )
  const path = `/cooks/${index}/stages`
  const stages = (valueAt(document, path) as readonly StageDocument[] | undefined) ?? []
  const hold = { do: 'hold', in: place, ...(place === 'box' ? {} : { at }), until: { after: time } }
  const others = stages.filter((stage) => stage.do !== 'hold' || (stage.in ?? 'cooker') !== place)
  const lastHeat = others.findLastIndex((stage) => stage.do === 'roast' || stage.do === 'sear')
  const into = place === 'cooker' ? lastHeat + 1 : others.length
  return setAt(document, path, [...others.slice(0, into), hold, ...others.slice(into)])
}

/** Colder and windier than the plan has it, in whole degrees and metres a second. */
export function worseWeather(shoot: Shoot, by: { readonly colderK?: number; readonly windierMpS?: number }): DayChange {
  const { air, wind } = surroundingsOf(shoot)
  return {
    kind: 'weather',
    ...(by.colderK === undefined ? {} : { air: formatTemp(celsius(Math.round(air - by.colderK))) }),
    ...(by.windierMpS === undefined ? {} : { wind: windText(wind + by.windierMpS) }),
  }
}
const windText = (wind: number) => `${Math.round(wind)} m/s`

const PLACES: Readonly<Record<HoldPlace, string>> = {
  cooker: 'on the choked fire',
  oven: 'in a warm oven',
  box: 'in an insulated box',
}
export const holdWords = (place: HoldPlace) => PLACES[place]

/** "The crew comes 30 min late", as a title. */
export function changeWords(change: DayChange): string {
  if (change.kind === 'crew-late') return `The crew comes ${change.minutes} min late`
  if (change.kind === 'hold') return `Held ${change.for} ${PLACES[change.in]}`
  const parts = [
    ...(change.air === undefined ? [] : [`${change.air} in the air`]),
    ...(change.wind === undefined ? [] : [`wind of ${change.wind}`]),
    ...(change.rain === undefined ? [] : [`${change.rain} rain`]),
  ]
  return `Weather: ${parts.join(', ')}`
}
