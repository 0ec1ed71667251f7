'use client'
import { celsius, fahrenheit, formatTemp, type Instant } from '@/lib/units'
import { flagSteps, flagWords, LETTER_PX, type LineMoment, type LinePlan, linePlan } from './live-line-plan'
import { useSet } from './set-context'

const [LEFT, RIGHT, TOP, GAP, COOKER_H, FOOT] = [34, 6, 26, 22, 54, 24]
const HOUR_MS = 3_600_000
const STEP_H = 24

interface Frame {
  readonly width: number
  readonly top: number
  readonly coreEnd: number
  readonly cookerTop: number
  readonly bottom: number
  readonly x: (at: Instant) => number
  readonly core: (c: number) => number
  readonly cooker: (c: number) => number
}

function frameOf(plan: LinePlan, width: number, height: number, top: number): Frame {
  const bottom = height - FOOT
  const cookerTop = bottom - COOKER_H
  const coreEnd = cookerTop - GAP
  return {
    width,
    top,
    coreEnd,
    cookerTop,
    bottom,
    x: (at) => LEFT + ((at - plan.from) / (plan.to - plan.from)) * (width - LEFT - RIGHT),
    core: (c) => coreEnd - (Math.min(plan.topC, Math.max(0, c)) / plan.topC) * (coreEnd - top),
    cooker: (c) => bottom - (Math.min(plan.cookerTopC, Math.max(0, c)) / plan.cookerTopC) * COOKER_H,
  }
}

interface LiveLineProps {
  readonly cook: string
  readonly width: number
  readonly height: number
  /** Wide enough to name each moment at its pole. */
  readonly flags?: boolean
}

/** One roast on one time axis: readings as open dots, the forecast in its band, moments as poles, and now. */
export function LiveLine({ cook, width, height, flags = false }: LiveLineProps) {
  const { session, facts, now, clock, units } = useSet()
  const plan = linePlan(session, facts, cook)
  if (!plan) return <p className="fine">No moment of this roast is known yet.</p>
  const bare = frameOf(plan, width, height, TOP)
  const words = plan.moments.map((moment) => (flags ? flagWords(clock, moment) : ''))
  const steps = flags ? flagSteps(plan.moments.map(({ at }, i) => ({ x: bare.x(at), words: words[i] ?? '' }))) : []
  // The staircase of labels adds to the height; it takes none from the curves.
  const stairs = flags ? (Math.max(0, ...steps) + 1) * STEP_H : 0
  const tall = height + stairs
  const frame = frameOf(plan, width, tall, TOP + stairs)
  const last = plan.core.at(-1)
  const title = `Heat line of ${cook}${last ? `, last read ${formatTemp(celsius(last.c), units)} at ${clock(last.at)}` : ''}`
  return (
    <svg className="line-svg" viewBox={`0 0 ${width} ${tall}`} width={width} role="img" aria-label={title}>
      <Axes plan={plan} frame={frame} />
      {plan.forecast && <Forecast of={plan.forecast} frame={frame} now={now} />}
      {plan.moments.map((moment, i) => (
        <Pole key={moment.name} moment={moment} frame={frame} step={steps[i] ?? 0} words={words[i] ?? ''} />
      ))}
      <Dots dots={plan.core} frame={frame} y={frame.core} />
      <Dots dots={plan.cooker} frame={frame} y={frame.cooker} />
      {now >= plan.from && now <= plan.to && <Now frame={frame} now={now} words={`now ${clock(now)}`} />}
    </svg>
  )
}

function Axes({ plan, frame }: { plan: LinePlan; frame: Frame }) {
  const { units, clock } = useSet()
  const shown = (c: number) => Math.round(units === 'us' ? fahrenheit(celsius(c)) : c)
  const step = plan.topC > 100 ? 40 : 20
  const levels = Array.from({ length: Math.floor(plan.topC / step) + 1 }, (_, i) => i * step)
  const every = plan.to - plan.from > 6 * HOUR_MS && frame.width < 700 ? 2 : 1
  const hours: Instant[] = []
  for (let at = Math.ceil(plan.from / HOUR_MS) * HOUR_MS; at <= plan.to; at += every * HOUR_MS)
    hours.push(at as Instant)
  return (
    <g>
      {hours.map((at) => (
        <g key={at}>
          <line x1={frame.x(at)} x2={frame.x(at)} y1={frame.top} y2={frame.bottom} className="hair" />
          <text x={frame.x(at)} y={frame.bottom + 17} textAnchor="middle">
            {clock(at)}
          </text>
        </g>
      ))}
      {levels.map((c) => (
        <g key={c}>
          <line x1={LEFT} x2={frame.width - RIGHT} y1={frame.core(c)} y2={frame.core(c)} className="hair" />
          <text x={LEFT - 5} y={frame.core(c) + 4} textAnchor="end">
            {shown(c)}°
          </text>
        </g>
      ))}
      <text x={LEFT + 3} y={frame.cookerTop - 5}>
        cooker
      </text>
      {[0, plan.cookerTopC].map((c) => (
        <g key={c}>
          <line x1={LEFT} x2={frame.width - RIGHT} y1={frame.cooker(c)} y2={frame.cooker(c)} className="hair" />
          <text x={LEFT - 5} y={frame.cooker(c) + 4} textAnchor="end">
            {shown(c)}°
          </text>
        </g>
      ))}
    </g>
  )
}

const path = (points: readonly (readonly [number, number])[]) =>
  points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('')

function Forecast({ of, frame, now }: { of: NonNullable<LinePlan['forecast']>; frame: Frame; now: Instant }) {
  const along = (values: readonly number[], y: (c: number) => number, from: Instant) =>
    of.at.flatMap((at, i) => (at >= from && values[i] !== undefined ? [[frame.x(at), y(values[i])] as const] : []))
  const start = of.at[0] ?? now
  const [low, high] = [along(of.low, frame.core, now), along(of.high, frame.core, now)]
  return (
    <g>
      {low.length > 1 && <path d={`${path([...low, ...[...high].reverse()])}Z`} className="band" />}
      <path d={path(along(of.core, frame.core, start))} className="curve" />
      <path d={path(along(of.cooker, frame.cooker, start))} className="fire" />
    </g>
  )
}

interface PoleProps {
  readonly moment: LineMoment
  readonly frame: Frame
  readonly step: number
  readonly words: string
}
/** From its label, or the window bar, down to where the curve begins. */
function Pole({ moment: { name, at, early, late, marked }, frame, step, words }: PoleProps) {
  const x = frame.x(at)
  const y = words === '' ? frame.top - 6 : frame.top - 10 - step * STEP_H
  return (
    <g className={marked ? 'pole past' : 'pole'}>
      <title>{name}</title>
      <line x1={x} x2={x} y1={y} y2={frame.coreEnd} />
      {!marked && early !== null && late !== null && (
        <rect x={frame.x(early)} y={y - 3} width={Math.max(2, frame.x(late) - frame.x(early))} height="3.5" />
      )}
      <circle cx={x} cy={frame.coreEnd} r="3.5" />
      {words !== '' && (
        <text x={Math.min(x + 6, frame.width - words.length * LETTER_PX)} y={y - 9}>
          {words}
        </text>
      )}
    </g>
  )
}

function Dots({ dots, frame, y }: { dots: LinePlan['core']; frame: Frame; y: (c: number) => number }) {
  return (
    <g>
      {dots.map(({ at, c }) => (
        <circle key={`${at} ${c}`} className="dot" cx={frame.x(at)} cy={y(c)} r="3.2" />
      ))}
    </g>
  )
}

function Now({ frame, now, words }: { frame: Frame; now: Instant; words: string }) {
  const x = frame.x(now)
  const tag = Math.min(frame.width - 66, Math.max(0, x - 33))
  return (
    <g>
      <line x1={x} x2={x} y1="18" y2={frame.bottom} className="nowline" />
      <rect x={tag} y="0" width="66" height="19" className="nowtag" />
      <text x={tag + 33} y="14" textAnchor="middle" className="nowtext">
        {words}
      </text>
    </g>
  )
}
