/** What would be worth measuring: the window at pull as it is, and as it would be with one more thing measured, or one less. */
import type { CookPlan } from './cook'
import { COOKERS } from './cooker'
import { courseOf, needsFirstLook } from './course'
import { knownCutOf } from './custom-cut'
import { firstLook } from './forecast-cook'
import { sortedCopy, windowOf } from './quantiles'
import { settingOf } from './setting'
import { boxShare, type Geometry, geometryOf } from './shape'
import { sidesOf } from './sides'
import { simulate } from './simulate'
import { drawMember, type Member, PRIORS } from './spread'

/** In the order of the form. */
export const MEASURABLES = ['thickness', 'width-and-length', 'start', 'cooker'] as const
export type Measurable = (typeof MEASURABLES)[number]

/** Seconds after meat-on between which 9 of 10 cooks are pulled. */
export interface PullWindow {
  readonly earlyS: number
  readonly lateS: number
}
export interface Narrowing {
  readonly what: Measurable
  /** It is measured already; `other` is the window without. */
  readonly measured: boolean
  readonly other: PullWindow
  /** How much narrower the window is with it than without, s. */
  readonly gainS: number
}
export interface Narrowings {
  readonly now: PullWindow
  /** The greatest gain first. */
  readonly each: readonly Narrowing[]
}

/** Quantiles of so few wander by a few per cent, but all windows share their draws, so that differences do not. */
const MEMBERS = 128
/** [estimate] what is left once a thermometer has been in the middle before meat-on, and one at meat level in the cooker. */
const MEASURED_START_SD_K = 0.5
const MEASURED_LEVEL_SD_K = 3

/**
 * The windows of one plan. None where too few cooks come to pull, or where pull goes by the clock and there is nothing to
 * narrow. The draws are the forecast's own: same seed, same members, one of their spreads drawn in.
 */
export function whatNarrows(plan: CookPlan, seed: number): Narrowings | undefined {
  const geometry = geometryFor(plan)
  const now = windowAt(plan, geometry, seed)
  if (now === undefined || widthOf(now) < 1) return undefined
  const each = [
    ...sides(plan, geometry, seed, 'thickness', ['thickness']),
    ...sides(plan, geometry, seed, 'width-and-length', ['width', 'length']),
    ...drawnIn(plan, geometry, seed, 'start', ({ startC }) => {
      const share = MEASURED_START_SD_K / PRIORS.startC.sd
      return { startC: plan.roast.start + share * (startC - plan.roast.start) }
    }),
    ...drawnIn(plan, geometry, seed, 'cooker', ({ levelK }) => {
      const share = MEASURED_LEVEL_SD_K / COOKERS[plan.cooker.kind].levelSdK
      return { levelK: Math.min(1, share) * levelK }
    }),
  ].map((found): Narrowing => {
    const gainS = widthOf(now) - widthOf(found.other)
    return { ...found, gainS: found.measured ? -gainS : gainS }
  })
  return { now, each: each.sort((a, b) => b.gainS - a.gainS) }
}

export const widthOf = ({ earlyS, lateS }: PullWindow) => lateS - earlyS
type Found = Omit<Narrowing, 'gainS'>

const geometryFor = ({ roast }: CookPlan) => geometryOf(knownCutOf(roast), roast.mass, roast)

/** A side measured already is left out again; one that is not is measured as it is expected to be. */
function sides(
  plan: CookPlan,
  geometry: Geometry,
  seed: number,
  what: Measurable,
  names: readonly ('thickness' | 'width' | 'length')[],
): Found[] {
  const { roast } = plan
  const measured = names.every((name) => roast[name] !== undefined)
  if (measured) {
    // a cut of one's own has no typical thickness to fall back on
    if (what === 'thickness' && roast.custom) return []
    const { thickness, width, length, ...rest } = roast
    const kept = { thickness, width, length, ...Object.fromEntries(names.map((name) => [name, undefined])) }
    const known = Object.fromEntries(Object.entries(kept).filter(([, side]) => side !== undefined))
    const without = { ...plan, roast: { ...rest, ...known } }
    const other = windowAt(without, geometryFor(without), seed)
    return other ? [{ what, measured, other }] : []
  }
  const cut = knownCutOf(roast)
  const expected = { thickness: geometry.thicknessM, width: geometry.widthM, length: geometry.lengthM }
  const more = Object.fromEntries(names.map((name) => [name, roast[name] ?? expected[name]]))
  const { spread } = sidesOf(cut, geometry.volumeM3, boxShare(cut.exponents), roast.mass, { ...roast, ...more })
  const share = spread / geometry.thicknessSpread
  return drawnIn(plan, geometry, seed, what, ({ thicknessFactor }) => ({ thicknessFactor: thicknessFactor ** share }))
}

type Change = (member: Member) => Partial<Member>
function drawnIn(plan: CookPlan, geometry: Geometry, seed: number, what: Measurable, change: Change): Found[] {
  const other = windowAt(plan, geometry, seed, change)
  return other ? [{ what, measured: false, other }] : []
}

function windowAt(plan: CookPlan, geometry: Geometry, seed: number, change?: Change): PullWindow | undefined {
  const setting = settingOf(plan, knownCutOf(plan.roast), geometry)
  const habits = COOKERS[plan.cooker.kind]
  const input = { startC: plan.roast.start, thicknessSpread: geometry.thicknessSpread, habits }
  const draw = (m: number) => {
    const member = drawMember(seed, m, input)
    return change ? { ...member, ...change(member) } : member
  }
  const course = courseOf(plan, needsFirstLook(plan) ? firstLook(plan, setting, draw) : undefined)
  const pulls = Float64Array.from({ length: MEMBERS }, (_, m) => simulate({ ...setting, course }, draw(m)).moments.pull)
  const { early, late } = windowOf(sortedCopy(pulls))
  return early === null || late === null ? undefined : { earlyS: early, lateS: late }
}
