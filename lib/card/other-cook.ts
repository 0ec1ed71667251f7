import type { CookerKind } from '../model/cook'
import { COOKERS } from '../model/cooker'
import { knownCutOf } from '../model/custom-cut'
import type { Forecast } from '../model/forecast'
import { typicalThicknessM } from '../model/shape'
import type { Cook, Shoot } from '../plan/shoot'
import { type Celsius, celsius, type Kelvins, type Kilograms, kilograms, type Metres, metres } from '../units'
import { probeAt, stagesOf } from './figures'

type Stage = Cook['stages'][number]
type Cooker = Cook['cooker']

/** What a reader has otherwise than the card; absent, as on the card. */
export interface Change {
  readonly thickness?: Metres
  /** Absent, what such a roast weighs at its thickness. */
  readonly mass?: Kilograms
  readonly start?: Celsius
  readonly cooker?: CookerKind
  /** By how much the probe reads more when a heat ends. */
  readonly hotter?: Kelvins
}

/** All that a cook of the card depends on, with nobody's name, place or day: what a reader's browser may know. */
export const bareShoot = ({ seed, place, authority, weather, cooks }: Shoot): Shoot => ({
  emberslate: 1,
  title: 'card',
  date: '2000-01-01',
  zone: 'UTC',
  place: { lat: 0, lon: 0, ...(place.altitude === undefined ? {} : { altitude: place.altitude }) },
  ...(seed === undefined ? {} : { seed }),
  ...(authority === undefined ? {} : { authority }),
  ...(weather === undefined ? {} : { weather }),
  cooks: cooks.slice(0, 1).map(({ ready: _, ...cook }) => ({ ...cook, cooker: anybodys(cook.cooker) })),
})
/** A reader's cooker has neither the filmed one's name nor its habits. */
const anybodys = ({ name: _n, memory: _m, ...cooker }: Cooker): Cooker => cooker

/** Measured, or as such a roast usually lies, to the millimetre. */
export const thicknessOf = (roast: Cook['roast']): Metres =>
  roast.thickness ?? metres(Math.round(typicalThicknessM(knownCutOf(roast), roast.mass) * 1000) / 1000)

/** What the probe reads when the meat is pulled: the plan's, or what it came to where the plan goes by the clock. */
export function pullOf(filmed: Forecast): Celsius {
  const until = stagesOf(filmed, 'roast').at(-1)?.until
  if (until && 'core' in until) return until.core
  return celsius(Math.round(probeAt(filmed, 'pull')?.likely ?? Number.NaN))
}

/** Home and other cookers seldom come to the last of their heat. [estimate] */
const SPARE_K = 25
/** The hottest that another cooker is asked for. */
export const hottestIn = (kind: CookerKind) => celsius(COOKERS[kind].hottestC - SPARE_K)
/** Whether a cook goes in another kind of cooker: a bath is nothing else, and a roast's heat must be within its reach. */
export function goesIn(cook: Cook, kind: CookerKind): boolean {
  if (kind === cook.cooker.kind) return true
  if (kind === 'water-bath' || cook.cooker.kind === 'water-bath') return false
  const hottest = Math.max(...cook.stages.map((stage) => (stage.do === 'roast' ? stage.at : 0)))
  return hottest <= hottestIn(kind)
}

/** A section of another thickness is as long as the filmed one; any other cut grows on all its sides. */
function massAt(roast: Cook['roast'], factor: number): Kilograms {
  const sides = knownCutOf(roast).sizing === 'section' ? 2 : 3
  return kilograms(Number((roast.mass * factor ** sides).toFixed(3)))
}
function roastOf(roast: Cook['roast'], { thickness, mass, start }: Change): Cook['roast'] {
  const { width: _w, length: _l, ...rest } = roast
  const thick = thickness ?? thicknessOf(roast)
  return {
    ...rest,
    thickness: thick,
    mass: mass ?? massAt(roast, thick / thicknessOf(roast)),
    ...(start === undefined ? {} : { start }),
  }
}

/** Its fire is fed enough; deflector and shelter are of the filmed kind of cooker only. */
function cookerOf({ fuel: _f, refuel: _r, ...own }: Cooker, asked: CookerKind | undefined): Cooker {
  return asked !== undefined && asked !== own.kind ? { kind: asked } : own
}

interface Heats {
  readonly pull: Celsius
  readonly hotter: number
  readonly kind: CookerKind
  readonly moved: boolean
  readonly last: Stage | undefined
}
function stageOf(stage: Stage, h: Heats): Stage {
  const core = (level: number) => ({ core: celsius(Math.round((level + h.hotter) * 10) / 10) })
  switch (stage.do) {
    case 'preheat':
      return h.kind === 'oven' || h.kind === 'convection-oven' ? stage : { do: 'preheat', at: stage.at }
    case 'roast': {
      // By the probe and not by the clock: a limit or a fixed turn is of the filmed size.
      const { max: _, turn, probe, ...rest } = stage
      const until = stage === h.last ? core(h.pull) : 'core' in stage.until ? core(stage.until.core) : stage.until
      const at = typeof probe?.at === 'number' ? (turn ? 'turn' : 'start') : probe?.at
      return {
        ...rest,
        until,
        ...(turn ? { turn: { at: 'half' } } : {}),
        ...(probe && at !== undefined ? { probe: { ...probe, at } } : {}),
      }
    }
    case 'sear': {
      const until = 'core' in stage.until ? core(stage.until.core) : stage.until
      if (!h.moved || stage.over === 'direct') return { ...stage, until }
      const at = celsius(Math.min(stage.at, hottestIn(h.kind)))
      return { ...stage, at, until: 'cooker' in until ? { cooker: celsius(Math.min(until.cooker, at)) } : until }
    }
    default:
      return stage
  }
}

/** The card's cook with a reader's roast and cooker: the same stages, ended by the probe; `pull` as on the card (`pullOf`). */
export function otherCook(cook: Cook, pull: Celsius, change: Change): Cook {
  const kind = change.cooker ?? cook.cooker.kind
  const heats: Heats = {
    pull,
    hotter: change.hotter ?? 0,
    kind,
    moved: kind !== cook.cooker.kind,
    last: cook.stages.findLast((stage) => stage.do === 'roast'),
  }
  return {
    ...cook,
    roast: roastOf(cook.roast, change),
    cooker: cookerOf(cook.cooker, change.cooker),
    stages: cook.stages.map((stage) => stageOf(stage, heats)),
  }
}
