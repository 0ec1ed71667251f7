'use client'
import { useEffect, useMemo, useState } from 'react'
import type { PlayedPicture as Day } from '@/lib/session/played-picture'
import { instant } from '@/lib/units'
import { clockFace } from '../set/clock-face'
import { useReadersWay } from '../ui/reader'
import * as words from '../words/start'
import { eventAt } from './played-frame'
import { PlayedPicture } from './played-picture'

/** The whole day in so long. */
const PLAYS_MS = 40_000
/** A frame that comes later than this does not make the day jump. */
const MOST_FRAME_MS = 100

/** The demo's rehearsal, playing by itself once; it stands where it ends, where it is paused, and for whom motion is too much. */
export function PlayedDay({ day, playsAtOnce }: { day: Day; playsAtOnce: boolean }) {
  const { minute, state, toggle, go } = usePlayed(day.minutes, playsAtOnce)
  const way = useReadersWay()
  const clock = useMemo(() => {
    const face = clockFace(day.zone, way)
    return (at: number) => face(instant(day.from + Math.round(at) * 60_000))
  }, [day, way])
  const event = eventAt(day, minute)
  return (
    <figure className="m-0">
      <div className="max-[1079px]:hidden">
        <PlayedPicture day={day} wide minute={minute} clock={clock} />
      </div>
      <div className="mx-auto max-w-[36rem] min-[1080px]:hidden">
        <PlayedPicture day={day} wide={false} minute={minute} clock={clock} />
      </div>
      <p className="mt-3 min-h-14 text-xl leading-7">
        {event && (
          <>
            <span className="time">{clock(event.at)}</span> {event.words}
          </>
        )}
      </p>
      <div className="mt-2 flex items-center gap-4">
        <button type="button" className="btn min-w-32" onClick={toggle}>
          {words.playButton[state]}
        </button>
        <input
          type="range"
          className="min-h-11 grow accent-ink"
          min={0}
          max={day.minutes}
          step={1}
          value={Math.round(minute)}
          aria-label={words.timeOfDay}
          aria-valuetext={event ? words.valueText(clock(minute), event.words) : clock(minute)}
          onChange={(change) => go(Number(change.target.value))}
        />
      </div>
      <PlayedFigures day={day} clock={clock} />
    </figure>
  )
}

/** The same numbers as a table, for whoever cannot or need not see the picture. */
function PlayedFigures({ day, clock }: { day: Day; clock: (minute: number) => string }) {
  return (
    <details className="mt-2 max-w-xl">
      <summary>{words.inFigures}</summary>
      <table>
        <thead>
          <tr>
            {[words.momentHead, words.forecastHead, words.happenedHead].map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {day.moments.map(({ name, at }, i) => {
            const [early, likely, late] = day.forecasts[0]?.windows[i] ?? [at, at, at]
            return (
              <tr key={name}>
                <td>{name}</td>
                <td>{words.about(clock(likely), clock(early), clock(late))}</td>
                <td>{clock(at)}</td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </details>
  )
}

type PlayState = 'plays' | 'stands' | 'over'

function usePlayed(minutes: number, playsAtOnce: boolean) {
  const [minute, setMinute] = useState(playsAtOnce ? 0 : minutes)
  const [plays, setPlays] = useState(false)
  useEffect(() => {
    if (matchMedia('(prefers-reduced-motion: reduce)').matches) setMinute(minutes)
    else setPlays(playsAtOnce)
  }, [playsAtOnce, minutes])
  useEffect(() => {
    if (!plays) return
    let last: number | null = null
    let frame = requestAnimationFrame(function step(now) {
      const passed = last === null ? 0 : Math.min(MOST_FRAME_MS, now - last)
      last = now
      setMinute((at) => Math.min(minutes, at + (passed / PLAYS_MS) * minutes))
      frame = requestAnimationFrame(step)
    })
    return () => cancelAnimationFrame(frame)
  }, [plays, minutes])
  const isOver = minute >= minutes
  useEffect(() => {
    if (isOver) setPlays(false)
  }, [isOver])
  return {
    minute,
    state: (plays ? 'plays' : isOver ? 'over' : 'stands') as PlayState,
    toggle: () => {
      if (!plays && isOver) setMinute(0)
      setPlays(!plays)
    },
    go: (to: number) => {
      setPlays(false)
      setMinute(to)
    },
  }
}
