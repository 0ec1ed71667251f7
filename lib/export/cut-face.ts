/** The predicted slice as a picture: shades by what the meat has been through, isotherms with their depths, bone and fat. */
import { knownCutOf } from '../model/custom-cut'
import type { Forecast } from '../model/forecast'
import { contour, depthOf, RAYS, type Section, shareWithin } from '../model/section'
import { celsius, formatLength, formatShare, formatTemp, metres, type UnitSystem } from '../units'
import {
  boneShapes,
  closedPath,
  cutFamily,
  fatCap,
  isotherm,
  type Placer,
  type Point,
  placer,
  ring,
} from './cut-outline'
import { circle, type Drawing, type Mark, path, tenth } from './drawing'
import { LETTERING, lettering } from './heat-line-sheet'
import { type LookScale, lookScale, SHADES, type Shade, STATES, shadeLevels } from './tones'

const SIZE = { width: 372, height: 252 }
/** Room of the slice itself; the leads stand to the right of it. */
const SLICE = { x: 136, y: 126, halfWidth: 129, halfThickness: 118 }
/** What of the picture is slice, from the left. */
export const SLICE_WIDTH = 2 * SLICE.x
const LEADS = { turn: 284, end: 298, words: 302, apart: 43 }

export interface Tone {
  /** Its shades, from the middle of the slice outward. */
  readonly shades: readonly Shade[]
  readonly range: string
  readonly words: string
}

/** What the shades mean, and between which highest temperatures they lie in this slice. */
export function tonesOf(forecast: Forecast, units: UnitSystem): Tone[] {
  const scale = scaleOf(forecast.cook)
  const meets = scale.bounds.map((bound) => peakAt(forecast.slice.section, scale, bound))
  return scale.words.map((words, i) => ({
    shades: shadesOf(scale, i),
    range: rangeOf(meets[i - 1], meets[i], units),
    words,
  }))
}
const scaleOf = (cook: Forecast['cook']) => lookScale(knownCutOf(cook.roast).animal)
const shadesOf = (scale: LookScale, state: number): Shade[] => {
  const each = SHADES / STATES
  return Array.from({ length: each }, (_, n) => `${scale.palette}-${state * each + n}` as const)
}
/** Highest temperature where the look passes a bound, toward the thin side; beyond the slice −∞ or +∞. */
function peakAt(section: Section, { field }: LookScale, bound: number): number {
  if (field === 'peakC') return bound
  const share = contour(section, field, bound)[0] as number
  if (share <= 0) return -Infinity
  if (share >= 1) return Infinity
  // the hottest level that still lies inside the bound, by halving: both fall inward
  let [low, high] = [0, 100]
  for (let n = 0; n < 20; n++) {
    const middle = (low + high) / 2
    if ((contour(section, 'peakC', middle)[0] as number) < share) low = middle
    else high = middle
  }
  return low
}
function rangeOf(from: number | undefined, to: number | undefined, units: UnitSystem): string {
  const figure = (level: number) => formatTemp(celsius(level), units)
  const bare = (level: number) => figure(level).replace(/ .*/, '')
  const low = from === undefined || from === -Infinity ? undefined : from
  const high = to === undefined || to === Infinity ? undefined : to
  if (from === Infinity || to === -Infinity) return 'none here'
  if (low === undefined && high === undefined) return 'right through'
  if (low === undefined) return `below ${figure(high as number)}`
  if (high === undefined) return `above ${figure(low)}`
  return `${bare(low)} to ${bare(high)}`
}

interface Line {
  readonly level: number
  readonly depthM: number
  readonly points: readonly Point[]
}

/** The predicted slice, with the name of what is cut and every line's figures in its tables. */
export function drawCutFace(forecast: Forecast, units: UnitSystem = 'metric'): Drawing {
  const { section } = forecast.slice
  const cut = knownCutOf(forecast.cook.roast)
  const scale = lookScale(cut.animal)
  const place = placerOf(section, cutFamily(cut))
  const whole = ring(section, everywhere(1), place)
  const lines = scale.linesC
    .map((level) => ({
      level,
      depthM: depthOf(section, 'peakC', level).thinM,
      points: isotherm(section, level, place),
    }))
    .filter(({ depthM }) => depthM > 0.001 && depthM < 0.97 * section.halfThicknessM)
  const marks = [
    ...shadeMarks(section, scale, place),
    ...lines.map(({ points }) => path(closedPath(points), ON_MEAT)),
    ...(cut.fatCap > 0 ? [path(closedPath(fatCap(section, cut.fatCap, place)), THIN_FAT)] : []),
    path(closedPath(whole), { stroke: 'crust', width: 5, round: true }),
    ...boneShapes(cut, section, place).flatMap(boneMarks),
    ...lines.flatMap((line, i) => leadMarks(line, i, lines.length, units)),
    ...(lines.length === 0 ? oneTone(section, scale, units) : []),
  ]
  return { ...SIZE, title: titleOf(forecast, units), marks, tables: [tableOf(forecast, units)] }
}
/** The meat keeps its own colours at dusk, and so do the lines upon it. */
const ON_MEAT = { stroke: 'seam', width: 1 } as const
const THIN_FAT = { fill: 'fat', ...ON_MEAT } as const
const everywhere = (share: number) => Array.from({ length: RAYS }, () => share)

/** The whole face in the outermost shade it has, then each shade further in on top of it. */
function shadeMarks(section: Section, scale: LookScale, place: Placer): Mark[] {
  const levels = shadeLevels(scale)
  const fill = (step: number) => ({ fill: `${scale.palette}-${step}` as const })
  const marks: Mark[] = []
  for (let step = SHADES - 1; step >= 0; step--) {
    const level = levels[step]
    const shares = level === undefined ? everywhere(1) : contour(section, scale.field, level)
    const some = shares.some((share) => share > 0.02)
    // a shade that the next one in covers is not drawn
    const next = step > 0 ? contour(section, scale.field, levels[step - 1] as number) : everywhere(0)
    const hidden = next.every((share, ray) => share >= (shares[ray] as number))
    if (some && !hidden) marks.push(path(closedPath(ring(section, shares, place)), fill(step)))
  }
  return marks
}

/** Scaled so that the turned outline just fits its room. */
function placerOf(section: Section, family: ReturnType<typeof cutFamily>): Placer {
  const outline = ring(section, everywhere(1), placer(family, section.halfWidthM, section.halfThicknessM))
  const middle = (k: 0 | 1) => (Math.max(...outline.map((p) => p[k])) + Math.min(...outline.map((p) => p[k]))) / 2
  const reach = (k: 0 | 1) => Math.max(...outline.map((p) => Math.abs(p[k] - middle(k))))
  const scale = Math.min(SLICE.halfWidth / reach(0), SLICE.halfThickness / reach(1))
  const at = placer(family, section.halfWidthM * scale, section.halfThicknessM * scale)
  const [dx, dy] = [SLICE.x - scale * middle(0), SLICE.y - scale * middle(1)]
  return (across, down) => {
    const [x, y] = at(across, down)
    return [x + dx, y + dy]
  }
}

const boneMarks = ({ bone, marrow }: { bone: readonly Point[]; marrow: readonly Point[] }): Mark[] => [
  path(closedPath(bone), { ...ON_MEAT, fill: 'bone', width: 1.25 }),
  path(closedPath(marrow), { ...ON_MEAT, fill: 'marrow' }),
]

/** A face without a line is named as a whole. */
function oneTone(section: Section, { linesC }: LookScale, units: UnitSystem): Mark[] {
  const coolest = section.peakC[0] as number
  const passed = linesC.filter((level) => level <= coolest).at(-1)
  const words =
    passed === undefined
      ? `below ${formatTemp(celsius(linesC[0] as number), units)}`
      : `above ${formatTemp(celsius(passed), units)}`
  return [
    lettering.start(SLICE_WIDTH + 6, SLICE.y, words, { ...LETTERING.time, role: 'ink' }, false),
    lettering.start(SLICE_WIDTH + 6, SLICE.y + 15, 'right through', LETTERING.small, false),
  ]
}

/** Where on its line each lead begins: the inner one on top, so that leads do not cross. */
function leadMarks({ level, depthM, points }: Line, i: number, count: number, units: UnitSystem): Mark[] {
  const share = count === 1 ? 0.5 : i / (count - 1)
  const angle = -1.15 + share * 1.85
  const [x, y] = points.reduce((best, point) => (off(point, angle) < off(best, angle) ? point : best))
  const labelY = SLICE.y - 4 + (i - (count - 1) / 2) * LEADS.apart
  const time = { ...LETTERING.time, role: 'ink' } as const
  const lead = `M${tenth(x)} ${tenth(y)}L${LEADS.turn} ${tenth(labelY)}H${LEADS.end}`
  const deep = `${depthWords(depthM, units)} ${units === 'us' ? 'deep' : 'in'}`
  return [
    path(lead, { stroke: 'paper', width: 3 }),
    path(lead, { stroke: 'ink-2', width: 1 }),
    circle(x, y, 2.8, { ...ON_MEAT, fill: 'bone', width: 1.25 }),
    lettering.start(LEADS.words, labelY + 1, formatTemp(celsius(level), units), time, false),
    lettering.start(LEADS.words, labelY + 16, deep, LETTERING.small, false),
  ]
}
const off = ([x, y]: Point, angle: number) => {
  const turn = Math.atan2(y - SLICE.y, x - SLICE.x) - angle
  return Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn)))
}
export const depthWords = (depthM: number, units: UnitSystem) =>
  units === 'us' ? formatLength(metres(depthM), units) : `${Math.round(depthM * 1000)} mm`

/** How much stays below the band's limit and how deep the band lies, at the thin side and at the ends. */
export function cutFaceSentence({ cutFace, slice, cook }: Forecast, units: UnitSystem): string {
  const { bandC } = scaleOf(cook)
  const limit = formatTemp(celsius(bandC), units)
  const share = cutFace.areaBelow.find((a) => a.limitC === bandC)?.share
  if (!share || share.likely < 0.005) return `All of the face has been above ${limit}.`
  const { thinM, endM } = depthOf(slice.section, 'peakC', bandC)
  const likely = `About ${formatShare(share.likely)} of the face stays below ${limit} (${range(share.low, share.high)})`
  return `${likely}. The band above it is ${depthWords(thinM, units)} deep at the thin side and ${depthWords(endM, units)} at the ends.`
}
const range = (low: number, high: number) =>
  formatShare(low) === formatShare(high)
    ? formatShare(low)
    : `${formatShare(low).replace(/ .*/, '')} to ${formatShare(high)}`

const titleOf = (forecast: Forecast, units: UnitSystem) =>
  `Predicted slice, ${formatLength(forecast.cutFace.thickness, units)} deep. ${cutFaceSentence(forecast, units)}`

/** Every line's depths and share as drawn; the windows of the ensemble where they are told. */
function tableOf({ cutFace, slice, cook }: Forecast, units: UnitSystem): Drawing['tables'][number] {
  const { section } = slice
  return {
    caption: 'The slice: how deep each highest temperature lies, and how much of the face has passed it',
    head: ['hotter than', 'at the thin side', 'at the ends', 'share of the face', 'low', 'high'],
    rows: scaleOf(cook).linesC.map((level) => {
      const { thinM, endM } = depthOf(section, 'peakC', level)
      const likely = 1 - shareWithin(section, contour(section, 'peakC', level))
      const window = cutFace.shareAbove.find(({ limitC }) => limitC === level)?.share
      const deep = (depth: number, half: number) => (depth >= half ? 'right through' : depthWords(depth, units))
      return [
        formatTemp(celsius(level), units),
        deep(thinM, section.halfThicknessM),
        deep(endM, section.halfWidthM),
        formatShare(likely),
        window ? formatShare(window.low) : '–',
        window ? formatShare(window.high) : '–',
      ]
    }),
  }
}
