import { scaleLinear, scaleTime } from 'd3-scale'
import { line } from 'd3-shape'
import type { FileReading } from '@/lib/log/logger-readings'
import { celsius, formatTemp, type Instant, instant, type UnitSystem } from '@/lib/units'
import { fromTo } from '../../words/readings'

const [WIDTH, HEIGHT] = [640, 230]
const EDGE = { left: 76, right: 112, top: 14, bottom: 32 }
const MOST_POINTS = 300
const DASHES = ['', '7 4', '2 4', '10 3 2 3']

interface Props {
  readonly readings: readonly FileReading[]
  readonly units: UnitSystem
  readonly clock: (at: Instant) => string
}

/** The readings as lines, so that a wrong unit or a wrong column is seen at once. */
export function ReadingsPicture({ readings, units, clock }: Props) {
  const series = seriesOf(readings)
  const times = readings.map(({ at }) => at)
  const temps = readings.map(({ temp }) => temp)
  const [first, last] = [least(times), -least(times.map((at) => -at))]
  const x = scaleTime([first, Math.max(last, first + 60_000)], [EDGE.left, WIDTH - EDGE.right])
  const y = scaleLinear([Math.min(0, least(temps)), -least(temps.map((c) => -c))], [HEIGHT - EDGE.bottom, EDGE.top])
  const path = line<FileReading>(
    ({ at }) => x(at),
    ({ temp }) => y(temp),
  )
  return (
    <svg
      className="readings-picture"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={fromTo(series.map(({ name }) => name).join(', '), clock(instant(first)), clock(instant(last)))}
    >
      {y
        .nice(4)
        .ticks(4)
        .map((tick) => (
          <g key={tick} transform={`translate(0 ${y(tick)})`}>
            <line className="hair" x1={EDGE.left} x2={WIDTH - EDGE.right} />
            <text x={EDGE.left - 6} dy="0.35em" textAnchor="end">
              {formatTemp(celsius(tick), units)}
            </text>
          </g>
        ))}
      {x.ticks(4).map((tick) => (
        <text key={tick.getTime()} x={x(tick)} y={HEIGHT - 6} textAnchor="middle">
          {clock(instant(tick.getTime()))}
        </text>
      ))}
      {series.map(({ name, points }, i) => (
        <path key={name} className="curve" d={path(points) ?? ''} strokeDasharray={DASHES[i % DASHES.length]} />
      ))}
      {apart(series.map(({ points }) => y(points.at(-1)?.temp ?? 0))).map((at, i) => (
        <text key={series[i]?.name} x={WIDTH - EDGE.right + 6} y={at} dy="0.35em">
          {series[i]?.name}
        </text>
      ))}
    </svg>
  )
}

const least = (values: readonly number[]) => values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY)

function seriesOf(readings: readonly FileReading[]) {
  const found = new Map<string, FileReading[]>()
  for (const reading of readings) {
    const name = reading.sensor.replace('-', ' ')
    const key = `${reading.cook}/${name}`
    const known = found.get(key)
    if (known) known.push(reading)
    else found.set(key, [reading])
  }
  const isOne = new Set(readings.map(({ cook }) => cook)).size < 2
  return [...found].map(([key, all]) => {
    const points = [...all].sort((a, b) => a.at - b.at)
    const step = Math.ceil(points.length / MOST_POINTS)
    return { name: isOne ? key.split('/')[1] : key.replace('/', ' '), points: points.filter((_, i) => i % step === 0) }
  })
}

/** Labels in their own order, none over another. */
function apart(at: readonly number[]): readonly number[] {
  const placed = [...at]
  const order = at.map((_, i) => i).sort((a, b) => (at[a] as number) - (at[b] as number))
  let above = Number.NEGATIVE_INFINITY
  for (const i of order) {
    placed[i] = Math.max(at[i] as number, above + 24)
    above = placed[i] as number
  }
  return placed
}
