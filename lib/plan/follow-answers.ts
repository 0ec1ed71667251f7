import { COOKER_KINDS, type CookerKind } from '../model/cook'
import { CUSTOM } from '../model/custom-cut'
import { ANIMALS, type Animal } from '../model/cut'
import { cutById } from '../model/cuts'
import { DONENESS_WORDS } from '../model/doneness'
import { formatMass, kilograms, readQuantity, type UnitSystem } from '../units'
import { removeAt, setAt, valueAt } from './edit'
import { type DoneCut, doneByFigures, doneChoices, type HowDone, usualDone } from './how-done'
import type { ShootDocument } from './shoot'
import { type CookAnswers, type StageDocument, startingStages } from './starting-cook'

/** A cut of one's own counts as about as thick as most. [estimate] */
const OWN_THICKNESS_M = 0.1

export function doneCutAt(document: ShootDocument, cook: number): DoneCut | undefined {
  const cut = String(valueAt(document, `/cooks/${cook}/roast/cut`))
  const animal = valueAt(document, `/cooks/${cook}/roast/custom/animal`)
  const known = ANIMALS.find((one): one is Animal => one === animal)
  if (cut === CUSTOM && known) return { id: CUSTOM, animal: known, thicknessM: OWN_THICKNESS_M }
  return cutById(cut)
}

const stagesAt = (document: ShootDocument, cook: number): readonly StageDocument[] => {
  const stages = valueAt(document, `/cooks/${cook}/stages`)
  return Array.isArray(stages) ? stages : []
}
const unitsOf = (stages: readonly StageDocument[]): UnitSystem =>
  /°\s*F/i.test(String(stages.find(({ do: what }) => what === 'roast')?.at)) ? 'us' : 'metric'

/** How done the cook is aimed: by its word, else by its figures; undefined where those are somebody's own. */
export function howDoneAt(document: ShootDocument, cook: number): HowDone | undefined {
  const cut = doneCutAt(document, cook)
  if (!cut) return undefined
  const word = valueAt(document, `/cooks/${cook}/target/doneness`)
  const choice = doneChoices(cut).find(({ id }) => id === word)
  if (choice) return choice.id
  const last = stagesAt(document, cook).findLast(({ do: what }) => what === 'roast' || what === 'sear')
  const read = readQuantity(valueAt(last, '/until/core'), 'temperature')
  return read.ok ? doneByFigures(cut, read.si) : undefined
}

function answersAt(document: ShootDocument, cook: number): CookAnswers | undefined {
  const cut = doneCutAt(document, cook)
  const kind = valueAt(document, `/cooks/${cook}/cooker/kind`)
  const cooker = COOKER_KINDS.find((one): one is CookerKind => one === kind)
  return cut && cooker && { cut, cooker, done: howDoneAt(document, cook) ?? usualDone(cut) }
}

/** The document with this cook done so: its word, and the figures that come to it. */
export function withHowDone(document: ShootDocument, cook: number, done: HowDone): ShootDocument {
  const at = `/cooks/${cook}/target`
  const isWord = DONENESS_WORDS.some((word) => word === done)
  const said = isWord ? setAt(document, `${at}/doneness`, done) : removeAt(document, at)
  const [before, after] = [answersAt(document, cook), answersAt(said, cook)]
  return before && after ? withStages(said, cook, before, { ...after, done }, true) : said
}

/**
 * The document after its cut or cooker was changed: what still stood as the answers before came to follows the new ones,
 * what somebody set by hand stays. Another animal takes new targets in any case: lamb's would leave a bird raw.
 */
export function followed(document: ShootDocument, edited: ShootDocument, cook: number): ShootDocument {
  const [before, after] = [answersAt(document, cook), answersAt(edited, cook)]
  if (!before || !after) return edited
  const another = before.cut.animal !== after.cut.animal
  const done =
    !another && doneChoices(after.cut).some(({ id }) => id === before.done) ? before.done : usualDone(after.cut)
  const weighed = withTypicalMass(edited, cook, before.cut, after.cut)
  const staged = withStages(weighed, cook, before, { ...after, done }, another)
  const said = valueAt(edited, `/cooks/${cook}/target/doneness`)
  if (said === undefined && !another) return staged
  const isWord = DONENESS_WORDS.some((word) => word === done)
  return isWord ? setAt(staged, `/cooks/${cook}/target/doneness`, done) : removeAt(staged, `/cooks/${cook}/target`)
}

/** What a roast of this cut weighs where nobody has said. */
export const typicalMass = (cut: { readonly id: string }, units: UnitSystem): string | undefined => {
  const known = cutById(cut.id)
  return known && formatMass(kilograms(known.atMassKg), units)
}
function withTypicalMass(document: ShootDocument, cook: number, before: DoneCut, after: DoneCut): ShootDocument {
  const at = `/cooks/${cook}/roast/mass`
  const stands = (['metric', 'us'] as const).find((units) => typicalMass(before, units) === valueAt(document, at))
  const typical = stands && typicalMass(after, stands)
  return typical ? setAt(document, at, typical) : document
}

function withStages(
  document: ShootDocument,
  cook: number,
  before: CookAnswers,
  after: CookAnswers,
  aim: boolean,
): ShootDocument {
  const now = stagesAt(document, cook)
  const units = unitsOf(now)
  const next = startingStages(after, units)
  const merged = mergedStages(startingStages(before, units), now, next)
  const aimed = aim ? merged.map((stage) => withAim(stage, next)) : merged
  return setAt(document, `/cooks/${cook}/stages`, aimed)
}

/** The stage with the target of the new answers, whatever stood there. */
function withAim(stage: StageDocument, next: readonly StageDocument[]): StageDocument {
  const until = next.find(({ do: what }) => what === stage.do)?.until
  return until && (stage.do === 'roast' || stage.do === 'sear') ? { ...stage, until } : stage
}

/** Stages somebody added stay in their place, and one that was taken out stays out. */
function mergedStages(
  old: readonly StageDocument[],
  now: readonly StageDocument[],
  next: readonly StageDocument[],
): readonly StageDocument[] {
  const of = (list: readonly StageDocument[], what: string) => list.find((stage) => stage.do === what)
  const kept = now.flatMap((stage) => {
    const [was, will] = [of(old, stage.do), of(next, stage.do)]
    if (will) return [merged(was, stage, will) as StageDocument]
    return was ? [] : [stage]
  })
  const fresh = next.filter((stage) => !of(now, stage.do) && !of(old, stage.do))
  return inOrder([...kept, ...fresh])
}
const ORDER = ['preheat', 'roast', 'sear']
const rank = ({ do: what }: StageDocument) => (ORDER.includes(what) ? ORDER.indexOf(what) : ORDER.length)
const inOrder = (stages: readonly StageDocument[]) => [...stages].sort((a, b) => rank(a) - rank(b))

/** Each member that still stands as it was takes its new value. */
function merged(old: unknown, now: unknown, next: unknown): unknown {
  if (isRecord(old) && isRecord(now) && isRecord(next)) {
    const keys = new Set([...Object.keys(now), ...Object.keys(next)])
    return Object.fromEntries(
      [...keys].flatMap((key) => {
        const value = merged(old[key], now[key], next[key])
        return value === undefined ? [] : [[key, value]]
      }),
    )
  }
  return JSON.stringify(old) === JSON.stringify(now) ? next : now
}
const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
