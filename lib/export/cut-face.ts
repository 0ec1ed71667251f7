import type { CutFace, Forecast } from '../model/forecast'
import { celsius, formatLength, formatShare, formatTemp, metres, type UnitSystem } from '../units'
import { type CutFamily, closedPath, cutFamily, ellipse, lineAtDepth, type Point } from './cut-outline'
import { circle, type Drawing, type Mark, path, type Role, tenth } from './drawing'
import { LETTERING, lettering } from './heat-line-sheet'

/** The slice's tones change at these peak temperatures, °C. */
export const TONE_LIMITS = [58, 60, 65, 70] as const
const TONE_ROLES: readonly Role[] = ['tone-1', 'tone-2', 'tone-3', 'tone-4', 'tone-5']

const SIZE = { width: 462, height: 300 }
/** Room of the slice itself; the leads stand to the right of it. */
const SLICE = { x: 180, y: 150, halfWidth: 172, halfThickness: 138 }
const LEADS = { turn: 356, end: 380, words: 385, top: 66, apart: 46 }

export interface Tone {
  readonly role: Role
  readonly range: string
  readonly words: string
}
const RED = ['red, raw-looking', 'rosy', 'pink, fading', 'tan', 'grey-brown']
const WHITE = ['raw-looking', 'translucent', 'just set', 'set', 'firm']
/** What the tones mean, from the middle outward; common practice, no source. */
export function tonesOf(cut: string, units: UnitSystem): Tone[] {
  const words = /^(turkey|chicken|salmon)/.test(cut) ? WHITE : RED
  const figure = (limit: number) => formatTemp(celsius(limit), units)
  return TONE_ROLES.map((role, i) => {
    const [from, to] = [TONE_LIMITS[i - 1], TONE_LIMITS[i]]
    const range =
      from === undefined && to !== undefined
        ? `below ${figure(to)}`
        : to === undefined || from === undefined
          ? `above ${figure(from ?? 0)}`
          : `${figure(from).replace(/ .*/, '')} to ${figure(to).replace(/ .*/, '')}`
    return { role, range, words: words[i] ?? '' }
  })
}

/** Depth below the surface at which the peak falls to a level, m; null where the whole face is hotter, 0 where none is. */
export function depthOfPeak({ depthM, peakC }: CutFace, level: number): number | null {
  if ((peakC[0] ?? 0) <= level) return 0
  for (let i = 1; i < peakC.length; i++) {
    const [hot, cool] = [peakC[i - 1] as number, peakC[i] as number]
    if (cool > level) continue
    const [a, b] = [depthM[i - 1] as number, depthM[i] as number]
    return hot === cool ? b : a + ((hot - level) / (hot - cool)) * (b - a)
  }
  return null
}

/** The predicted slice: tones by the hottest each point has been, each edge an isotherm with its depth. */
export function drawCutFace(forecast: Forecast, units: UnitSystem = 'metric'): Drawing {
  const { cutFace: face, cook } = forecast
  const family = cutFamily(cook.roast.cut)
  const scale = scaleOf(family, face)
  const at = (depth: number) => slicePoints(family, face, depth, scale)
  const isotherms = TONE_LIMITS.flatMap((limit) => {
    const depth = depthOfPeak(face, limit)
    return depth === null ? [] : [{ limit, depth, points: at(depth) }]
  })
  const leads = isotherms.filter((line) => line.depth > 0)
  const marks = [
    ...toneMarks(at(0), isotherms),
    path(closedPath(at(0)), { stroke: 'crust', width: 6, round: true }),
    ...boneMarks(family, cook.roast.cut, face, scale),
    ...leads.flatMap((line, i) => leadMarks(line, i, leads.length, units)),
    ...(leads.length === 0 ? oneTone(isotherms[0]?.limit, units) : []),
  ]
  return { ...SIZE, title: titleOf(forecast, units), marks, tables: [tableOf(face, units)] }
}

/** A face without an edge is named as a whole; `limit` is the lowest that no point of it passed. */
function oneTone(limit: number | undefined, units: UnitSystem): Mark[] {
  const [hottest] = TONE_LIMITS.slice(-1)
  const words =
    limit === undefined
      ? `above ${formatTemp(celsius(hottest ?? 70), units)}`
      : `below ${formatTemp(celsius(limit), units)}`
  return [
    lettering.start(LEADS.words - 20, SLICE.y, words, { ...LETTERING.time, role: 'ink' }, false),
    lettering.start(LEADS.words - 20, SLICE.y + 15, 'right through', LETTERING.small, false),
  ]
}

/** Pixels to the metre at which the turned outline just fits its room. */
function scaleOf(family: CutFamily, face: CutFace): number {
  const points = lineAtDepth(family, face.width / 2, face.thickness / 2, 0)
  const reach = (k: 0 | 1) => Math.max(...points.map((point) => Math.abs(point[k])))
  return Math.min(SLICE.halfWidth / reach(0), SLICE.halfThickness / reach(1))
}

type Isotherm = {
  readonly limit: (typeof TONE_LIMITS)[number]
  readonly depth: number
  readonly points: readonly Point[]
}

const slicePoints = (family: CutFamily, face: CutFace, depth: number, scale: number): Point[] =>
  lineAtDepth(family, (face.width / 2) * scale, (face.thickness / 2) * scale, depth * scale).map(([x, y]) => [
    x + SLICE.x,
    y + SLICE.y,
  ])

/** The whole face in the outermost tone, then each cooler part on top of it. */
function toneMarks(whole: readonly Point[], isotherms: readonly Isotherm[]): Mark[] {
  const outer = path(closedPath(whole), { fill: 'tone-5' })
  const inner = [...isotherms].reverse().map(({ limit, depth, points }) => {
    const fill = TONE_ROLES[TONE_LIMITS.indexOf(limit)] ?? 'tone-1'
    return path(closedPath(points), depth > 0 ? { fill, stroke: 'ink', width: 1 } : { fill })
  })
  return [outer, ...inner]
}

function boneMarks(family: CutFamily, cut: string, face: CutFace, scale: number): Mark[] {
  if (!cut.endsWith('bone-in')) return []
  const [a, b] = [(face.width / 2) * scale, (face.thickness / 2) * scale]
  const outline = { fill: 'bone', stroke: 'ink', width: 1.25 } as const
  const round = (x: number, y: number, rx: number, ry: number, turn: number) => [
    path(closedPath(ellipse(SLICE.x + x, SLICE.y + y, rx, ry, turn)), outline),
    path(closedPath(ellipse(SLICE.x + x, SLICE.y + y, rx * 0.5, ry * 0.46, turn)), {
      fill: 'marrow',
      stroke: 'ink',
      width: 1,
    }),
  ]
  if (family === 'leg') return round(-a * 0.14, b * 0.16, b * 0.21, b * 0.18, -18)
  if (family === 'shoulder') return round(-a * 0.05, b * 0.3, a * 0.2, b * 0.085, -8)
  if (family === 'rib') return round(-a * 0.3, b * 0.72, a * 0.24, b * 0.085, 4)
  return []
}

/** Where on its line each lead begins: the inner one on top, so that leads do not cross. */
function leadMarks({ limit, depth, points }: Isotherm, i: number, count: number, units: UnitSystem): Mark[] {
  const share = count === 1 ? 0.5 : i / (count - 1)
  const angle = -1.05 + share * 1.5
  const [x, y] = points.reduce((best, point) => (off(point, angle) < off(best, angle) ? point : best))
  const labelY = LEADS.top + (i + (TONE_LIMITS.length - count) / 2) * LEADS.apart
  const time = { ...LETTERING.time, role: 'ink' } as const
  return [
    path(`M${tenth(x)} ${tenth(y)}L${LEADS.turn} ${labelY}H${LEADS.end}`, { stroke: 'ink-2', width: 1 }),
    circle(x, y, 2.8, { fill: 'paper', stroke: 'ink', width: 1.25 }),
    lettering.start(LEADS.words, labelY + 1, formatTemp(celsius(limit), units), time, false),
    lettering.start(
      LEADS.words,
      labelY + 16,
      units === 'us' ? `${depthWords(depth, units)} deep` : `${depthWords(depth, units)} in`,
      LETTERING.small,
      false,
    ),
  ]
}
const off = ([x, y]: Point, angle: number) => {
  const turn = Math.atan2(y - SLICE.y, x - SLICE.x) - angle
  return Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn)))
}
const depthWords = (depth: number, units: UnitSystem) =>
  units === 'us' ? formatLength(metres(depth), units) : `${Math.round(depth * 1000)} mm`

/** "About 43 % of the face is still pink (below 65 °C); 46 % is above 70 °C." */
export function cutFaceSentence({ cutFace }: Forecast, units: UnitSystem): string {
  const below = (limit: number) => cutFace.areaBelow.find((a) => a.limitC === limit)?.share.likely ?? 0
  const pink = `About ${formatShare(below(65))} of the face stays below ${formatTemp(celsius(65), units)}`
  return `${pink}; ${formatShare(1 - below(70))} has been above ${formatTemp(celsius(70), units)}.`
}

const titleOf = (forecast: Forecast, units: UnitSystem) =>
  `Predicted slice, ${formatLength(forecast.cutFace.thickness, units)} deep. ${cutFaceSentence(forecast, units)}`

function tableOf(face: CutFace, units: UnitSystem): Drawing['tables'][number] {
  return {
    caption: 'The slice',
    head: ['never hotter than', 'from this deep', 'share of the face', 'low', 'high'],
    rows: face.areaBelow.map(({ limitC, share }) => {
      const depth = depthOfPeak(face, limitC)
      const where = depth === null ? 'nowhere' : depth === 0 ? 'everywhere' : depthWords(depth, units)
      return [formatTemp(celsius(limitC), units), where, ...[share.likely, share.low, share.high].map(formatShare)]
    }),
  }
}
