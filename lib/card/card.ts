import type { CookFacts } from '../log/cook-facts'
import { cutOf } from '../model/custom-cut'
import type { Animal, Cut } from '../model/cuts'
import type { Forecast } from '../model/forecast'
import type { Shoot } from '../plan/shoot'
import { cautionsFor } from './cautions'
import { checkSentence } from './check-sentence'
import type { Caution, CheckedClaim } from './claim'
import { topicLeftBy } from './read-claims'
import { type RecipePart, recipePart } from './recipe-part'
import { type DayPart, timeLine } from './time-line'
import { sentencesOf } from './tokens'
import { writtenIntro, writtenSteps, writtenTitle } from './write-steps'

type Author = NonNullable<Shoot['card']>
/** A contradicted sentence that its author prints as their own statement, and why. */
export type Override = NonNullable<NonNullable<Author['steps']>[number]['override']>[number]

/** One step as printed: written from the plan, or the author's own. `override` holds the sentences printed all the same, with the reason. */
export interface CardStep {
  readonly id: string
  readonly text: string
  readonly by: 'plan' | 'author'
  readonly override: readonly Override[]
}
/** The recipe of one cook, every number of it written from the forecast that the day is laid out by. */
export interface Card {
  readonly cook: string
  readonly cut: string
  readonly animal: Animal
  readonly boneShare: number
  readonly doneness: string | null
  /** Whose food-safety numbers the shoot asks for. */
  readonly authority: string
  readonly title: CardStep
  readonly intro: CardStep
  /** "Serves 8.", empty where the author says nothing of it. */
  readonly serves: CardStep
  /** The author's own note on keeping; empty without one. */
  readonly storage: CardStep
  readonly timeLine: readonly DayPart[]
  readonly steps: readonly CardStep[]
  readonly recipe: RecipePart
  readonly cautions: readonly Caution[]
}
export type Forecasts = ReadonlyMap<string, Forecast>

const planStep = (id: string, text: string): CardStep => ({ id, text, by: 'plan', override: [] })

/** The author's steps take the place of the written ones of the same id; others stand after the author's step before them; an empty one is left out. */
export const mergeSteps = (written: readonly CardStep[], own: NonNullable<Author['steps']>): CardStep[] =>
  placeSteps(written, own).filter((s) => s.text.trim() !== '')

function placeSteps(written: readonly CardStep[], own: NonNullable<Author['steps']>): CardStep[] {
  const steps = [...written]
  let last = -1
  for (const { id, text, override = [] } of own) {
    const step: CardStep = { id, text, by: 'author', override }
    const at = steps.findIndex((s) => s.id === id)
    if (at >= 0) steps[at] = step
    else steps.splice(last + 1, 0, step)
    last = at >= 0 ? at : last + 1
  }
  return steps
}

/** The card of the shoot's first cook. It never simulates: all it knows is the forecast given. */
export function buildCard(shoot: Shoot, forecasts: Forecasts): Card {
  const cook = shoot.cooks[0]
  const forecast = cook && forecasts.get(cook.id)
  const cut = cook && cutOf(cook.roast)
  if (!cook || !forecast || !cut) throw new RangeError(`no forecast or cut for the first cook, ${cook?.id ?? 'none'}`)
  const own: Author = shoot.card ?? {}
  const written = planSteps(forecast, cut)
  const authored = (id: string, text: string | undefined, fallback: string): CardStep =>
    text?.trim() ? { id, text: text.trim(), by: 'author', override: [] } : planStep(id, fallback)
  const of = {
    cut: cut.name,
    animal: cut.animal,
    boneShare: cut.boneShare,
    authority: shoot.authority ?? 'US',
  }
  return {
    ...of,
    cook: cook.id,
    doneness: cook.target?.doneness ?? null,
    title: authored('title', own.title, writtenTitle(forecast, cut)),
    intro: authored('intro', own.intro, writtenIntro(forecast)),
    serves: planStep('serves', servesText(own)),
    storage: authored('storage', own.storage, ''),
    timeLine: timeLine(forecast),
    steps: mergeSteps(written, own.steps ?? []),
    recipe: recipePart(shoot, of, forecast),
    cautions: cautionsFor(shoot, forecasts),
  }
}

const planSteps = (forecast: Forecast, cut: Cut) => writtenSteps(forecast, cut).map((s) => planStep(s.id, s.text))

/** The ids of all steps in reading order, with those that the author emptied and so leaves out. */
export function stepOrder(shoot: Shoot, card: Card, forecasts: Forecasts): string[] {
  const forecast = forecasts.get(card.cook)
  const cut = shoot.cooks[0] && cutOf(shoot.cooks[0].roast)
  const written = forecast && cut ? planSteps(forecast, cut) : []
  return placeSteps(written, shoot.card?.steps ?? []).map(({ id }) => id)
}

const servesText = (own: Author) =>
  own.serves === undefined || /\bserves\b/i.test(own.intro ?? '') ? '' : `Serves ${own.serves}.`

/** Every text of the card that makes claims, in reading order. */
export const claimTexts = (card: Card): readonly CardStep[] => [
  card.title,
  card.serves,
  card.intro,
  ...card.steps,
  card.storage,
]

/** What the check says of each claim on the card, in reading order, against the card's own cook and what its day's log says. */
export function checkCard(card: Card, forecasts: Forecasts, facts: CookFacts | null = null): CheckedClaim[] {
  const forecast = forecasts.get(card.cook)
  if (!forecast) throw new RangeError(`no forecast for cook ${card.cook}`)
  return claimTexts(card).flatMap((step) => {
    let before: ReturnType<typeof topicLeftBy> = null
    const found: CheckedClaim[] = []
    for (const sentence of sentencesOf(step.text)) {
      found.push(...checkSentence(sentence, { card, forecast, facts, step: step.id, before }))
      before = topicLeftBy(sentence) ?? before
    }
    return distinct(found)
  })
}
/** Claims of one kind in several sentences of a step are numbered on. */
function distinct(claims: readonly CheckedClaim[]): CheckedClaim[] {
  const seen = new Map<string, number>()
  return claims.map((claim) => {
    const base = `${claim.step}.${claim.kind}`
    const nth = (seen.get(base) ?? 0) + 1
    seen.set(base, nth)
    return { ...claim, id: nth > 1 ? `${base}.${nth}` : base }
  })
}
