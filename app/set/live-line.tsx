'use client'
import { celsius, fahrenheit, type Instant } from '@/lib/units'
import { type LineMoment, type LinePlan, linePlan } from './live-line-plan'
import { useSet } from './set-context'

const [LEFT, RIGHT, TOP, GAP, COOKER_H, FOOT] = [34, 6, 26, 22, 54, 24]
const HOUR_MS = 3_600_000

interface Frame {
  readonly width: number
  readonly coreEnd: number
  readonly cookerTop: number
  readonly bottom: number
  readonly x: (at: Instant) => number
  readonly core: (c: number) => number
  readonly cooker: (c: number) => number
}

function frameOf(plan: LinePlan, width: number, height: number): Frame {
  const bottom = height - FOOT
  const cookerTop = bottom - COOKER_H
  const coreEnd = cookerTop - GAP
  return {
    width,
    coreEnd,
    cookerTop,
    bottom,
    x: (at) => LEFT + ((at - plan.from) / (plan.to - plan.from)) * (width - LEFT - RIGHT),
    core: (c) => coreEnd - (Math.min(plan.topC, Math.max(0, c)) / plan.topC) * (coreEnd - TOP),
    cooker: (c) => bottom - (Math.min(plan.cookerTopC, Math.max(0, c)) / plan.cookerTopC) * COOKER_H,
  }
}

/** One roast on one time axis: readings as open dots, the forecast in its band, moments as poles, and now. */
export function LiveLine({ cook, width, height }: { cook: string; width: number; height: number }) {
  const { session, facts, now, clock } = useSet()
  const plan = linePlan(session, facts, cook)
  if (!plan) return <p className="fine">No moment of this roast is known yet.</p>
  const frame = frameOf(plan, width, height)
  const last = plan.core.at(-1)
  const title = `Heat line of ${cook}${last ? `, last read ${Math.round(last.c)} °C at ${clock(last.at)}` : ''}`
  return (
    <svg className="line-svg" viewBox={`0 0 ${width} ${height}`} width={width} role="img" aria-label={title}>
      <Axes plan={plan} frame={frame} />
      {plan.forecast && <Forecast of={plan.forecast} frame={frame} now={now} />}
      {plan.moments.map((moment) => (
        <Pole key={moment.name} moment={moment} frame={frame} />
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
          <line x1={frame.x(at)} x2={frame.x(at)} y1={TOP} y2={frame.bottom} className="hair" />
          <text x={frame.x(at)} y={frame.bottom + 17} textAnchor="middle">
            {clock(at)}
          </text>
        </g>
      ))}
      {levels.map((c) => (
        <g key={c}>
          <line x1={LEFT} x2={frame.width - RIGHT} y1={frame.core(c)} y2={frame.core(c)} className="hair" />
          <text x={LEFT - 5} y={frame.core(c) + 4} textAnchor="end">
            {shown(c)}
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
            {shown(c)}
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

function Pole({ moment: { name, at, early, late, marked }, frame }: { moment: LineMoment; frame: Frame }) {
  const x = frame.x(at)
  return (
    <g className={marked ? 'pole past' : 'pole'}>
      <title>{name}</title>
      <line x1={x} x2={x} y1={TOP - 6} y2={frame.coreEnd} />
      {!marked && early !== null && late !== null && (
        <rect x={frame.x(early)} y={TOP - 9} width={Math.max(2, frame.x(late) - frame.x(early))} height="3.5" />
      )}
      <circle cx={x} cy={frame.coreEnd} r="3.5" />
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
