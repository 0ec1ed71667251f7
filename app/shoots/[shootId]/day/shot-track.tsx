'use client'
import { asRead } from '@/lib/plan/as-read'
import { useReadersWay } from '../../../ui/reader'
import { doesNotFitWords, pinnedWords, timeOf } from '../../../words/day'
import { clockWords } from './clock-words'
import type { DayAxis, ShotRow } from './day-view'
import type { Hold } from './shot-move'
import { useShift } from './use-shift'

interface TrackProps {
  readonly row: ShotRow
  readonly axis: DayAxis
  readonly zone: string
  readonly title: string
  readonly pinned: boolean
  readonly hold: Hold
  readonly onTry: (at: number | null) => void
  readonly onSet: (at: number) => void
}

/** A shot on the day's time axis: setup open, roll filled, the window of its moment as a line. */
export function ShotTrack(props: TrackProps) {
  const { row, axis } = props
  return (
    <div className="track">
      <HourLines axis={axis} />
      {row.place ? (
        <PlacedBar {...props} place={row.place} />
      ) : (
        <span className="small absolute left-2 top-3">{doesNotFitWords}</span>
      )}
    </div>
  )
}

function HourLines({ axis }: { axis: DayAxis }) {
  const d = axis.hours.map(({ at }) => `M${percent(axis, at)} 0V1`).join('')
  return (
    <svg className="absolute inset-0 h-full w-full" viewBox="0 0 100 1" preserveAspectRatio="none" aria-hidden="true">
      <path d={d} stroke="var(--rule)" strokeWidth={0.75} vectorEffect="non-scaling-stroke" />
    </svg>
  )
}
const percent = ({ from, to }: DayAxis, at: number) => Math.round(((at - from) / (to - from)) * 1e4) / 100

/** Beyond this share of the axis the time stands before the bar. */
const LABEL_BEFORE = 82

function PlacedBar(props: TrackProps & { place: NonNullable<ShotRow['place']> }) {
  const { row, axis, zone, title, pinned, hold, place } = props
  // What a moment carries with it is counted from its likely time, as the shot's own start is.
  const { at, handle } = useShift({
    from: place.start,
    least: axis.from,
    most: axis.to,
    onTry: props.onTry,
    onSet: props.onSet,
  })
  const shift = at === null ? 0 : at - place.start
  const left = (time: number) => `${percent(axis, time + shift)}%`
  const wide = (from: number, to: number) => `${percent(axis, axis.from + to - from)}%`
  const way = useReadersWay()
  const clock = asRead(clockWords(place.start + shift, zone), way)
  const spoken = `${clock} to ${asRead(clockWords(place.end + shift, zone), way)}${pinned ? ', pinned' : ''}${at === null ? '' : ', tried out'}`
  const look = `bar ${row.kind}${pinned ? ' pinned' : ''}${row.tentative ? ' loose' : ''}`
  const before = percent(axis, place.end + shift) > LABEL_BEFORE
  return (
    <>
      {row.reach && (
        <span className="reach" style={{ left: left(row.reach[0]), width: wide(row.reach[0], row.reach[1]) }} />
      )}
      <span className="setup" style={{ left: left(place.setup), width: wide(place.setup, place.start) }} />
      <span className={look} style={{ left: left(place.start), width: wide(place.start, place.end) }} />
      <span
        className={`time mark${at === null ? '' : ' tried'}`}
        style={before ? { right: `${100 - percent(axis, place.setup + shift)}%` } : { left: left(place.end) }}
        aria-hidden="true"
      >
        {clock}
        {pinned && <span className="pin-word">{pinnedWords}</span>}
      </span>
      {hold === 'fixed' ? (
        <span className="sr-only">{spoken}</span>
      ) : (
        <span
          role="slider"
          tabIndex={0}
          aria-label={timeOf(title)}
          aria-describedby={`how-${hold}`}
          aria-valuemin={0}
          aria-valuemax={Math.round((axis.to - axis.from) / 60_000)}
          aria-valuenow={Math.round((place.start + shift - axis.from) / 60_000)}
          aria-valuetext={spoken}
          className="grip"
          style={{ left: left((place.start + place.end) / 2) }}
          {...handle}
        />
      )}
    </>
  )
}

/** Hours over the tracks. */
export function TrackHead({ axis }: { axis: DayAxis }) {
  return (
    <div className="track-head" aria-hidden="true">
      {axis.hours.map(({ at, words }) => (
        <span key={at} style={{ left: `${percent(axis, at)}%` }}>
          {words}
        </span>
      ))}
    </div>
  )
}
