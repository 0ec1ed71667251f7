import { type Celsius, formatDuration, formatTemp, type Seconds, seconds, type UnitSystem } from '../units'
import { tenth } from './drawing'
import { type FilmFacts, probeReads, stateWord } from './film-facts'

export interface OverlayStyle {
  /** The footage's own size, px. */
  readonly width: number
  readonly height: number
  readonly units: UnitSystem
  /** Said in the picture itself: readings of a day that was never cooked. */
  readonly invented: boolean
}
/** What stands in the picture at a time; two times with the same have one picture. */
export interface OverlayFigures {
  readonly probe: string | null
  readonly since: string
  readonly minute: number
}

/** Null before the meat went on: nothing is shown. */
export function overlayFigures(facts: FilmFacts, t: Seconds, units: UnitSystem): OverlayFigures | null {
  const state = stateWord(facts, t)
  if (state === null) return null
  const minute = Math.floor(t / 60)
  const probeC = probeReads(facts, t)
  return {
    probe: probeC === null ? null : formatTemp(probeC, units),
    since: `${formatDuration(seconds(60 * minute))}, ${state}`,
    minute,
  }
}

const USUAL = { width: 1920, height: 1080 } as const
/** "3840x2160" as a size of footage, the usual one where none is named; null where it is none. */
export function readSize(written: string | null | undefined): Pick<OverlayStyle, 'width' | 'height'> | null {
  if (written === null || written === undefined) return USUAL
  const [, width = 0, height = 0] = /^(\d{3,4})x(\d{3,4})$/.exec(written)?.map(Number) ?? []
  return width >= 320 && height >= 320 && width <= 4096 && height <= 4096 ? { width, height } : null
}

/** Of a picture 1080 high; clear of the outer twentieth, which screens may cut off. */
const HIGH = 1080
const EDGE = 0.05
/** app/look/tokens.css, :root. On footage the letters are paper with an ink edge: one of the two shows on any ground. */
const COLOURS = { paper: '#fbf8f1', ink: '#1d1814', ember: '#9a2f08' } as const
const CURVE = { width: 440, top: 772, height: 92, ground: 875 } as const
const BASELINES = { invented: 752, probe: 976, since: 1026 } as const

/** The overlay at a time after meat-on: two lines of figures and the probe's curve so far, on a clear ground. */
export function overlaySvg(facts: FilmFacts, t: Seconds, style: OverlayStyle): string {
  const { width, height } = style
  const scale = height / HIGH
  const wide = width / scale
  const figures = overlayFigures(facts, t, style.units)
  const head = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${tenth(wide)} ${HIGH}">`
  return figures ? `${head}${marksOf(facts, figures, tenth(wide * EDGE), style.invented)}</svg>` : `${head}</svg>`
}

function marksOf(facts: FilmFacts, figures: OverlayFigures, left: number, invented: boolean): string {
  const { probe, since, minute } = figures
  return [
    probe === null ? '' : letters(left, BASELINES.probe, probe, 104, 800),
    letters(left, BASELINES.since, since, 40, 700),
    curve(facts, minute, left),
    invented ? letters(left, BASELINES.invented, 'invented readings', 32, 700) : '',
  ].join('')
}

const FAMILY = "'Sofia Sans Condensed','Arial Narrow',sans-serif"
function letters(x: number, y: number, words: string, size: number, weight: number): string {
  const edge = `stroke="${COLOURS.ink}" stroke-width="${tenth(3 + size * 0.06)}" stroke-linejoin="round" paint-order="stroke"`
  return `<text x="${x}" y="${y}" font-family="${FAMILY}" font-size="${size}" font-weight="${weight}" letter-spacing="${tenth(size * 0.02)}" fill="${COLOURS.paper}" ${edge}>${words}</text>`
}

/** The scale is the whole day's, so that the line grows along its ground and never jumps. */
function curve(facts: FilmFacts, minute: number, left: number): string {
  const known = facts.probeC.filter((one) => one !== null)
  const [low, high] = [Math.min(...known), Math.max(...known)]
  if (!(high > low)) return ''
  const x = (at: number) => tenth(left + (CURVE.width * at) / Math.max(1, facts.probeC.length - 1))
  const y = (tempC: Celsius) => tenth(CURVE.top + CURVE.height * (1 - (tempC - low) / (high - low)))
  const runs: string[] = []
  let pen = 'M'
  for (const [at, tempC] of facts.probeC.slice(0, minute + 1).entries()) {
    if (tempC !== null) runs.push(`${pen}${x(at)} ${y(tempC)}`)
    pen = tempC === null ? 'M' : 'L'
  }
  const d = runs.join('')
  const now = facts.probeC[minute]
  const ground = `M${left} ${CURVE.ground}H${left + CURVE.width}`
  const dot = (fill: string, r: number) =>
    now === null || now === undefined ? '' : `<circle cx="${x(minute)}" cy="${y(now)}" r="${r}" fill="${fill}"/>`
  return [
    stroked(ground, COLOURS.ink, 5) + stroked(d, COLOURS.ink, 9) + dot(COLOURS.ink, 14),
    stroked(ground, COLOURS.paper, 2) + stroked(d, COLOURS.paper, 4) + dot(COLOURS.paper, 11),
    dot(COLOURS.ember, 7),
  ].join('')
}
const stroked = (d: string, stroke: string, width: number) =>
  d === ''
    ? ''
    : `<path d="${d}" fill="none" stroke="${stroke}" stroke-width="${width}" stroke-linejoin="round" stroke-linecap="round"/>`
