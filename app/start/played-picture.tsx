import { memo } from 'react'
import type { PlayedPicture as Day, PlayedForecast } from '@/lib/session/played-picture'
import * as words from '../words/start'
import { along, forecastAt, type PlayedFrame, playedFrame } from './played-frame'

interface PictureProps {
  readonly day: Day
  readonly wide: boolean
  readonly minute: number
  /** "18:04" of a minute of the day. */
  readonly clock: (minute: number) => string
}

/** The day as it stands at a minute of it: measured up to now, forecast from there on, moments with their windows or their tick. */
export function PlayedPicture({ day, wide, minute, clock }: PictureProps) {
  const frame = playedFrame(day, wide)
  const forecast = forecastAt(day, minute)
  const past = day.moments.filter(({ at }) => at <= minute).length
  return (
    <svg
      className="block h-auto w-full"
      viewBox={`0 0 ${frame.width} ${frame.height}`}
      role="img"
      aria-label={words.playedLabel(day.title)}
    >
      <Ground day={day} wide={wide} clock={clock} />
      <Forecast day={day} wide={wide} from={forecast} now={forecast.from} />
      <Flags day={day} wide={wide} from={forecast} past={past} clock={clock} />
      <Measured day={day} wide={wide} until={Math.floor(minute)} />
      <Now frame={frame} minute={minute} words={clock(minute)} />
    </svg>
  )
}

type Part = Pick<PictureProps, 'day' | 'wide'>
const HOUR = 60

/** Daylight, hours, levels and targets: what never moves. */
const Ground = memo(function Ground({ day, wide, clock }: Part & Pick<PictureProps, 'clock'>) {
  const frame = playedFrame(day, wide)
  const first = (HOUR - (Math.round(day.from / 60_000) % HOUR)) % HOUR
  const hours = Array.from({ length: Math.ceil((day.minutes - first) / HOUR) }, (_, i) => first + i * HOUR)
  return (
    <g>
      <Daylight day={day} wide={wide} />
      {hours.map((at) => (
        <g key={at}>
          <line x1={frame.x(at)} x2={frame.x(at)} y1="22" y2={frame.cooker.bottom} className="stroke-rule" />
          <text
            x={Math.min(frame.x(at), frame.width - 18)}
            y={frame.hours}
            textAnchor="middle"
            className="fill-ink-2 font-cond text-[13px]"
          >
            {clock(at)}
          </text>
        </g>
      ))}
      {[0, 20, 40, 60, 80].map((c) => (
        <Level key={c} frame={frame} y={frame.meat.y(c)} words={`${c}°`} />
      ))}
      {[0, 150, 320].map((c) => (
        <Level key={c} frame={frame} y={frame.cooker.y(c)} words={`${c}°`} />
      ))}
      {wide && (
        <>
          <text x="0" y={frame.meat.top + 12} className="fill-ink font-cond text-[13px]">
            {words.meat}
          </text>
          <text x="0" y={frame.cooker.top + 12} className="fill-ink font-cond text-[13px]">
            {words.cookerWord}
          </text>
        </>
      )}
      {day.targets.map((c) => (
        <line
          key={c}
          x1={frame.left}
          x2={frame.right}
          y1={frame.meat.y(c)}
          y2={frame.meat.y(c)}
          className="stroke-edge [stroke-dasharray:1_4]"
        />
      ))}
    </g>
  )
})

const TOP = 22
/** As on the heat line: golden hour is hatched wide, twilight upright and close, the dark is solid at any hour. */
function Daylight({ day, wide }: Part) {
  const frame = playedFrame(day, wide)
  const height = wide ? 16 : 7
  return day.light.map(({ light, from, to }) => {
    const [x, end] = [frame.x(from), frame.x(to)]
    const strokes = (gap: number, lean: number) =>
      Array.from({ length: Math.max(0, Math.floor((end - x - lean) / gap)) }, (_, i) => {
        const foot = (x + (i + 1) * gap).toFixed(1)
        return `M${foot} ${TOP + height}l${lean} ${-height}`
      }).join('')
    return (
      <g key={`${light} ${from}`}>
        <rect
          x={x}
          y={TOP}
          width={end - x}
          height={height}
          className={light === 'night' ? 'fill-[#0b0908] stroke-edge [stroke-width:0.75]' : 'fill-leaf'}
        />
        {light.startsWith('golden-hour') && (
          <path d={strokes(7, height)} className="stroke-ink-2 [stroke-width:0.75]" />
        )}
        {light === 'twilight' && <path d={strokes(4, 0)} className="stroke-ink-2" />}
      </g>
    )
  })
}

function Level({ frame, y, words: said }: { frame: PlayedFrame; y: number; words: string }) {
  return (
    <g>
      <line x1={frame.left} x2={frame.right} y1={y} y2={y} className="stroke-rule" />
      <text x={frame.left - 6} y={y + 4} textAnchor="end" className="fill-ink-2 font-cond text-[12.5px]">
        {said}
      </text>
    </g>
  )
}

/** From when it was made on: its band and its middle. */
const Forecast = memo(function Forecast({ day, wide, from, now }: Part & { from: PlayedForecast; now: number }) {
  const frame = playedFrame(day, wide)
  const ahead = from.curve.filter(([at]) => at >= now - 6)
  const of = (place: 1 | 2 | 3, points = ahead) =>
    points.filter(([at]) => at >= from.meatOn).map((point) => [frame.x(point[0]), frame.meat.y(point[place])] as const)
  // Reckoned only, until the probe is in.
  const sofar = from.curve.filter(([at]) => at <= now)
  const fire = ahead.map((point) => [frame.x(point[0]), frame.cooker.y(point[4])] as const)
  return (
    <g>
      {ahead.length > 1 && (
        <path d={`${along([...of(1), ...of(3).reverse()])}Z`} className="fill-band stroke-edge [stroke-width:0.75]" />
      )}
      <path
        d={along(of(2, sofar))}
        className="fill-none stroke-ink-2 [stroke-dasharray:1_4] [stroke-linecap:round] [stroke-width:1.5]"
      />
      <path d={along(of(2))} className="fill-none stroke-ink [stroke-width:1.75]" />
      <path d={along(fire)} className="fill-none stroke-ink-2 [stroke-dasharray:3_3]" />
    </g>
  )
})

/** Every moment at its pole: with its window while it is to come, with a tick once it was. */
const Flags = memo(function Flags(props: Part & Pick<PictureProps, 'clock'> & { from: PlayedForecast; past: number }) {
  const { day, wide, from, past, clock } = props
  const frame = playedFrame(day, wide)
  const next = [...day.moments].sort((a, b) => a.at - b.at)[past]
  return (
    <g>
      {day.moments.map((moment, i) => {
        const was = moment.at <= from.from + 0.05 || day.moments.filter(({ at }) => at < moment.at).length < past
        const [early, likely, late] = from.windows[i] ?? [moment.at, moment.at, moment.at]
        const at = was ? moment.at : likely
        return (
          <Flag
            key={moment.name}
            frame={frame}
            row={wide ? moment.row : 0}
            at={at}
            window={was || late - early < 1 ? null : [early, late]}
            was={was}
            words={
              wide || moment === next
                ? words.flag(clock(at), moment.name, was || late - early < 1 ? null : [clock(early), clock(late)])
                : null
            }
          />
        )
      })}
    </g>
  )
})

interface FlagProps {
  readonly frame: PlayedFrame
  readonly row: number
  readonly at: number
  readonly window: readonly [number, number] | null
  readonly was: boolean
  readonly words: readonly [time: string, name: string, window: string] | null
}
function Flag({ frame, row, at, window, was, words: said }: FlagProps) {
  const x = frame.x(at)
  const rows = (frame.meat.top - 10 - frame.flags) / Math.max(1, frame.step)
  const y = frame.wide ? frame.flags + (rows - row) * frame.step - 4 : frame.meat.top - 8
  const ends = !frame.wide && x > frame.width / 2
  return (
    <g className={was ? 'text-ink-3' : 'text-ember'}>
      <line x1={x} x2={x} y1={y - 12} y2={frame.meat.bottom} className="stroke-current" />
      {window && (
        <rect
          x={frame.x(window[0])}
          y={y + 1}
          width={Math.max(2, frame.x(window[1]) - frame.x(window[0]))}
          height="3.5"
          className="fill-current"
        />
      )}
      {was ? (
        <path d={`M${x - 4} ${frame.meat.bottom - 1}l3.5 4 6-8`} className="fill-none stroke-ink [stroke-width:2.25]" />
      ) : (
        <circle cx={x} cy={frame.meat.bottom} r="4" className="fill-paper stroke-current [stroke-width:2.25]" />
      )}
      {said && (
        <text
          x={ends ? x - 6 : x + 6}
          y={frame.wide ? y - 3 : y - 14}
          textAnchor={ends ? 'end' : 'start'}
          className="font-cond text-[14px] [paint-order:stroke] [stroke-width:4] stroke-paper"
        >
          <tspan className="fill-current font-bold">{said[0]}</tspan>
          <tspan className="fill-ink">{` ${said[1]} `}</tspan>
          <tspan className="fill-ink-2 text-[13px]">{said[2]}</tspan>
        </text>
      )}
    </g>
  )
}

/** Readings come as open dots, one after the other. */
const Measured = memo(function Measured({ day, wide, until }: Part & { until: number }) {
  const frame = playedFrame(day, wide)
  const dots = (of: Day['core'], y: (c: number) => number) =>
    of
      .filter(([at]) => at <= until)
      .map(([at, c]) => (
        <circle
          key={at}
          cx={frame.x(at)}
          cy={y(c)}
          r={wide ? 3.4 : 2.4}
          className="fill-paper stroke-ink [stroke-width:1.75]"
        />
      ))
  return (
    <g>
      {dots(day.cooker, frame.cooker.y)}
      {dots(day.core, frame.meat.y)}
    </g>
  )
})

function Now({ frame, minute, words: clock }: { frame: PlayedFrame; minute: number; words: string }) {
  const x = frame.x(minute)
  const tag = Math.min(frame.width - 62, Math.max(0, x - 31))
  return (
    <g>
      <line x1={x} x2={x} y1="19" y2={frame.cooker.bottom} className="stroke-ember [stroke-width:2.25]" />
      <rect x={tag} y="0" width="62" height="19" className="fill-ember" />
      <text x={tag + 31} y="14.5" textAnchor="middle" className="fill-paper font-cond text-[14px] font-bold">
        {clock}
      </text>
    </g>
  )
}
