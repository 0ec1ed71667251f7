import type { Call, Layout, PlacedShot } from '../day/layout'
import type { EntryDocument } from '../log/entry'
import { entryId, RANDOM_BYTES } from '../log/entry-id'
import { whenText } from '../log/entry-words'
import type { Forecast } from '../model/forecast'
import type { KernelName } from '../model/kernels'
import type { MomentId } from '../model/moment-ids'
import { type Chance, chanceOf } from '../model/random'
import { fromIso } from '../plan/clock'
import type { Cook, Shoot } from '../plan/shoot'
import { type Instant, instant, type Kilograms, later, minutes, seconds } from '../units'
import { type MadeUpCook, type MadeUpFrom, madeUpCook, plannedMoments } from './made-up-cook'
import { madeUpTakes, missedShot, timecodeAt } from './made-up-takes'

export interface RehearsalInput {
  readonly shoot: Shoot
  readonly layout: Layout
  /** Those that the layout was made from. */
  readonly forecasts: ReadonlyMap<string, Forecast>
  readonly seed: number
  readonly kernel: KernelName
}

/** So that nobody ever takes it for a day that was. */
const MADE_UP = 'made-up'
export const MADE_UP_NOTE = 'Rehearsal: invented readings.'

const STREAM = 72
const READ_EACH_MIN = 2
/** Of a cook that lasts longer than this the probes are read half as often: the screen has no more room. */
const LONG_MIN = 480
const PROBE_SETTLES_MIN = 3
const CORE_FLICKER_K = 0.1
const COOKER_FLICKER_K = 0.7
/** A thumb is so late, and a camera rolls or stops so much sooner or later than told. [estimate] */
const MOST_LATE_S = 20
const LEAST_LATE_S = 3
/** A camera's clock, set by hand in the morning. [estimate] */
const MOST_CLOCK_OFF_S = 12

/**
 * A day as it might go: the readings of cooks that the plan does not know, marks by the cook a little late, takes of the
 * shots, meals and work on the fire, in order of time. What people answer is not in it: that hangs on how it is called.
 */
export function madeUpDay(input: RehearsalInput): readonly EntryDocument[] {
  const day = new MadeUpDay(input)
  return day.entries()
}

interface Lived {
  readonly cook: Cook
  readonly lived: MadeUpCook
  readonly planned: ReadonlyMap<MomentId, Instant>
}

class MadeUpDay {
  readonly #input: RehearsalInput
  readonly #chance: Chance
  readonly #clocks = new Map<string, number>()
  readonly #made: { readonly at: Instant; readonly document: EntryDocument }[] = []

  constructor(input: RehearsalInput) {
    this.#input = input
    this.#chance = chanceOf(input.seed, 0, STREAM)
  }

  entries(): readonly EntryDocument[] {
    const cooks = this.#input.shoot.cooks.flatMap((cook) => this.#live(cook) ?? [])
    for (const one of cooks) this.#cook(one)
    this.#cameraClocks()
    const missed = missedShot(this.#input.layout, cooks[0]?.planned.get('first-slice'))
    for (const shot of this.#input.layout.shots) this.#takes(shot, cooks, missed)
    for (const meal of this.#input.layout.meals) this.#meal(meal, cooks[0])
    const sorted = this.#made.sort((a, b) => a.at - b.at)
    const first = sorted[0]?.at
    if (first === undefined) return []
    return [
      this.#entry(instant(first - 1000), 'note', { text: MADE_UP_NOTE }),
      ...sorted.map(({ document }) => document),
    ]
  }

  #live(cook: Cook): Lived | null {
    const { shoot, layout, forecasts, seed, kernel } = this.#input
    const forecast = forecasts.get(cook.id)
    if (!forecast) return null
    const from: MadeUpFrom = {
      shoot,
      cook,
      forecast,
      planned: fromIso(layout.meatOn[cook.id] ?? layout.start),
      seed,
      kernel,
    }
    const lived = madeUpCook(from)
    return lived && { cook, lived, planned: plannedMoments(from) }
  }

  #cook(one: Lived): void {
    this.#marks(one)
    this.#fire(one)
    this.#probe(one)
    const { moments } = one.lived
    const stepS = 60 * READ_EACH_MIN * (this.#lengthMin(one) > LONG_MIN ? 2 : 1)
    const core = this.#coreSpans(one)
    const off = moments.get('off-heat') ?? one.lived.meatOn
    const end = Math.max(off, ...core.map(([, to]) => to))
    for (let at = one.lived.meatOn; at <= end; at = later(at, seconds(stepS))) {
      if (at <= off) this.#read(one, at, 'cooker', one.lived.cookerC(at) + COOKER_FLICKER_K * this.#chance.normal())
      if (core.some(([from, to]) => from <= at && at <= to))
        this.#read(one, later(at, seconds(1)), 'core', one.lived.coreC(at) + CORE_FLICKER_K * this.#chance.normal())
    }
  }
  #lengthMin = ({ lived }: Lived) => ((lived.moments.get('off-heat') ?? lived.meatOn) - lived.meatOn) / 60_000
  #read({ cook }: Lived, at: Instant, sensor: string, tempC: number): void {
    this.#log(at, 'reading', { cook: cook.id, sensor, temp: `${tempC.toFixed(1)} °C` })
  }

  /** When the core can be read: not before the probe is in and has settled, nor over an open fire. */
  #coreSpans({ lived, cook }: Lived): readonly (readonly [Instant, Instant])[] {
    const { moments } = lived
    const settled = (at: Instant) => later(at, minutes(PROBE_SETTLES_MIN))
    const slice = moments.get('first-slice') ?? lived.meatOn
    const from = settled(moments.get('probe-in') ?? lived.meatOn)
    if (!seared(cook)) return [[from, slice]]
    const [pull, off] = [moments.get('pull'), moments.get('off-heat')]
    const roast = [from, pull ?? slice] as const
    return off === undefined ? [roast] : [roast, [settled(later(off, minutes(2))), slice]]
  }

  #marks({ cook, lived }: Lived): void {
    let last = 0
    for (const [moment, at] of lived.moments) {
      if (moment === 'carryover-peak') continue
      // In the order of the chain, however quick one thumb is.
      last = Math.max(last + 1000, this.#soonAfter(at))
      this.#log(instant(last), 'mark', { cook: cook.id, moment }, this.#cookOnSet())
    }
  }
  #probe({ cook, lived: { moments } }: Lived): void {
    const [pull, off] = [moments.get('pull'), moments.get('off-heat')]
    if (!seared(cook) || pull === undefined || off === undefined) return
    const found = (at: Instant, word: string) =>
      this.#log(at, 'probe-check', { cook: cook.id, sensor: 'core', found: word }, this.#cookOnSet())
    found(later(pull, seconds(25)), 'pulled-out')
    found(later(off, minutes(2)), 'in')
  }
  /** The model was told of these openings and this fuel at these times: so it went. */
  #fire({ cook, lived: { meatOn } }: Lived): void {
    const did = (afterS: number, what: string, fuel?: Kilograms) =>
      this.#log(
        later(meatOn, seconds(afterS)),
        'fire',
        { cook: cook.id, did: what, ...(fuel === undefined ? {} : { fuel: `${fuel} kg` }) },
        this.#cookOnSet(),
      )
    for (const { at, add } of cook.cooker.refuel ?? []) did(at, 'fed', add)
    for (const { at, open } of this.#input.layout.lidOpenings?.[cook.id] ?? []) {
      did(at, 'lid-open')
      did(at + open, 'lid-shut')
    }
  }

  #takes(shot: PlacedShot, cooks: readonly Lived[], missed: string | null): void {
    const { shoot, layout } = this.#input
    const call = layout.calls.find((one) => one.for === shot.id)
    const [from, to] = lived(shot, call, cooks)
    const clockS = (camera: string) => this.#clocks.get(camera) ?? 0
    const made = { shoot, shot, call, from, to, missed: shot.id === missed, clockS, soonAfter: this.#soonAfter }
    const said = madeUpTakes(made)
    for (const { at, kind, rest, person } of said) this.#log(at, kind, rest, person)
  }
  /** Every camera's clock is read as the day begins, and each is off by its own. */
  #cameraClocks(): void {
    const { shoot, layout } = this.#input
    const begins = instant(
      Math.min(...[layout.start, ...layout.shots.map(({ setupStart }) => setupStart)].map(fromIso)),
    )
    for (const { id: camera } of shoot.cameras ?? []) {
      const offS = Math.round(MOST_CLOCK_OFF_S * (2 * this.#chance.uniform() - 1) * 25) / 25
      this.#clocks.set(camera, offS)
      const at = this.#soonAfter(begins)
      this.#log(at, 'camera-clock', { camera, timecode: timecodeAt(at, shoot.zone, offS) })
    }
  }
  #meal({ start, end, people }: Layout['meals'][number], hero: Lived | undefined): void {
    const at = (iso: string) => this.#soonAfter(moved(fromIso(iso), hero))
    this.#log(at(start), 'meal', { is: 'begins', people }, people[0])
    this.#log(at(end), 'meal', { is: 'ends', people }, people[0])
  }

  #cookOnSet(): string | undefined {
    const people = this.#input.shoot.people ?? []
    return (people.find(({ roles }) => roles.includes('cook')) ?? people[0])?.id
  }
  #soonAfter = (at: Instant) =>
    instant(at + Math.round(1000 * (LEAST_LATE_S + (MOST_LATE_S - LEAST_LATE_S) * this.#chance.uniform())))
  #log(at: Instant, kind: string, rest: EntryDocument, person?: string): void {
    this.#made.push({ at, document: this.#entry(at, kind, rest, person) })
  }
  #entry(at: Instant, kind: string, rest: EntryDocument, person?: string): EntryDocument {
    const random = Uint8Array.from({ length: RANDOM_BYTES }, () => Math.floor(256 * this.#chance.uniform()))
    const by = { device: MADE_UP, ...(person === undefined ? {} : { person }) }
    return { id: entryId(at, random), at: whenText(at), by, kind, ...rest }
  }
}

const seared = (cook: Cook) => cook.stages.some((stage) => stage.do === 'sear')

/** A shot at a moment goes with its moment; others keep their place between the moments of the first cook. */
function lived(shot: PlacedShot, call: Call | undefined, cooks: readonly Lived[]): readonly [Instant, Instant] {
  const [start, end] = [fromIso(shot.start), fromIso(shot.end)]
  const own = cooks.find(({ cook }) => cook.id === call?.cook)
  const [was, came] = call?.moment && own ? [own.planned.get(call.moment), own.lived.moments.get(call.moment)] : []
  if (was === undefined || came === undefined) return [moved(start, cooks[0]), moved(end, cooks[0])]
  return [instant(start + came - was), instant(end + came - was)]
}

/** A time of the plan as the day has it: between two moments it keeps its share of the way. */
export function moved(at: Instant, hero: Pick<Lived, 'planned' | 'lived'> | undefined): Instant {
  const knots = knotsOf(hero)
  const after = knots.findIndex(({ was }) => was > at)
  const [before, next] = [knots[(after < 0 ? knots.length : after) - 1], after < 0 ? undefined : knots[after]]
  if (!before) return at
  if (!next) return instant(at + before.came - before.was)
  const share = (at - before.was) / (next.was - before.was)
  return instant(Math.round(before.came + share * (next.came - before.came)))
}
function knotsOf(hero: Pick<Lived, 'planned' | 'lived'> | undefined) {
  const knots: { readonly was: Instant; readonly came: Instant }[] = []
  for (const [moment, was] of hero?.planned ?? []) {
    const came = hero?.lived.moments.get(moment)
    const last = knots.at(-1)
    if (came !== undefined && (!last || (was > last.was && came > last.came))) knots.push({ was, came })
  }
  return knots
}
