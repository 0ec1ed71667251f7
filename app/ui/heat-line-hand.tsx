'use client'
import { type KeyboardEvent, type ReactNode, useEffect, useMemo, useRef, useState } from 'react'
import type { Drawing } from '@/lib/export/drawing'
import { clockAt } from '@/lib/export/heat-line-clock'
import { drawHeat } from '@/lib/export/heat-line-draw'
import type { HeatFacts } from '@/lib/export/heat-line-facts'
import { nextMoment, readoutAt } from '@/lib/export/heat-line-readout'
import { type Instant, instant } from '@/lib/units'
import {
  closer,
  earlierMoment,
  laterMoment,
  pointOrPress,
  shownFrom,
  wholeDay,
  wholeDayShown,
} from '../words/heat-line'
import { DrawingSvg } from './drawing'
import type { HeatShapeView } from './heat-line-shapes'
import { HeatLineTime } from './heat-line-time'

export interface HandProps {
  readonly facts: HeatFacts
  readonly shapes: readonly HeatShapeView[]
  readonly over?: (drawing: Drawing) => ReactNode
  /** Somebody asked for it by the keyboard. */
  readonly focus: boolean
  /** The set's own minute; else the device's, while the day is on. */
  readonly now?: Instant
}
const MINUTE = 60_000
const HOUR = 60 * MINUTE

/** The picture with a time chosen on it, told in words; closer about that time; and now, on the day itself. */
export function HeatLineHand({ facts, shapes, over, focus, ...set }: HandProps) {
  const shape = useShape(shapes)
  const own = useNow(facts)
  const now = set.now ?? own
  const [at, setAt] = useState<Instant | null>(null)
  const [about, setAbout] = useState<Instant | null>(null)
  const [told, setTold] = useState('')
  const { view } = shape
  const drawing = useMemo(() => {
    if (about === null && now === undefined && shape.drawing) return shape.drawing
    const span = about === null ? undefined : spanAbout(facts, about)
    return drawHeat({ ...view, now, ...(span ? { span, say: undefined } : {}) }, facts)
  }, [about, now, view, shape, facts])
  const { axis } = drawing
  if (!axis) return <DrawingSvg drawing={drawing} grows />
  const chosen = at ?? now ?? nearest(facts.meat[0]?.at ?? axis.from)
  const choose = (to: number, tell = false) => {
    const most = about === null ? axis : { from: facts.from, to: facts.to }
    const next = nearest(Math.min(most.to, Math.max(most.from, to)))
    setAt(next)
    if (about !== null && (next < axis.from || next > axis.to)) setAbout(next)
    if (tell) setTold(readoutAt(facts, next))
  }
  const look = (to: Instant | null) => {
    setAbout(to)
    setAt(chosen)
    const span = to === null ? null : spanAbout(facts, to)
    setTold(span ? shownFrom(clockAt(facts.clock, span.from), clockAt(facts.clock, span.to)) : wholeDayShown)
  }
  const toMoment = (step: 1 | -1, tell: boolean) => {
    const next = nextMoment(facts, chosen, step)
    if (next !== null) choose(next, tell)
  }
  const onKeyDown = (event: KeyboardEvent) => {
    const move = keyMove(event, about !== null)
    if (move === null) return
    event.preventDefault()
    if (typeof move === 'number') choose(chosen + move * MINUTE)
    else if (move === 'next' || move === 'before') toMoment(move === 'next' ? 1 : -1, false)
    else if (move === 'closer') look(chosen)
    else if (move === 'whole') look(null)
    else choose(move === 'first' ? axis.from : axis.to)
  }
  return (
    <>
      <figure className="relative m-0">
        <HeatLineTime
          facts={facts}
          drawing={drawing}
          at={at}
          chosen={chosen}
          choose={choose}
          onKeyDown={onKeyDown}
          focus={focus}
        >
          <DrawingSvg drawing={drawing} grows />
        </HeatLineTime>
        {over?.(drawing)}
      </figure>
      <div className={`heat-keys ${view.standing ? 'standing' : ''}`}>
        <p className="heat-read" aria-hidden="true">
          {at === null ? pointOrPress : readoutAt(facts, at)}
        </p>
        <button type="button" className="textlink" onClick={() => toMoment(-1, true)}>
          {earlierMoment}
        </button>
        <button type="button" className="textlink" onClick={() => toMoment(1, true)}>
          {laterMoment}
        </button>
        <button type="button" className="textlink" onClick={() => look(about === null ? chosen : null)}>
          {about === null ? closer : wholeDay}
        </button>
        <p className="sr-only" role="status">
          {told}
        </p>
      </div>
    </>
  )
}

const nearest = (at: number): Instant => instant(Math.round(at / MINUTE) * MINUTE)

/** An hour either side; less of a short cook. */
function spanAbout({ from, to }: HeatFacts, at: Instant): { from: Instant; to: Instant } {
  const half = nearest(Math.min(HOUR, (to - from) / 4))
  return { from: instant(at - half), to: instant(at + half) }
}

type Move = number | 'next' | 'before' | 'first' | 'last' | 'closer' | 'whole' | null
const ARROWS: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }
const NAMED: Readonly<Record<string, Move>> = {
  PageDown: 'next',
  PageUp: 'before',
  Home: 'first',
  End: 'last',
  '+': 'closer',
  '=': 'closer',
  Enter: 'closer',
  '-': 'whole',
  Escape: 'whole',
}
/** Minutes, or where to. */
function keyMove({ key, shiftKey, ctrlKey, metaKey, altKey }: KeyboardEvent, isClose: boolean): Move {
  if (ctrlKey || metaKey || altKey) return null
  const way = ARROWS[key]
  if (way !== undefined) return way * (shiftKey ? 6 : 1) * (isClose ? 1 : 5)
  if (key === 'Escape' && !isClose) return null
  return NAMED[key] ?? null
}

/** The shape for this screen. */
function useShape(shapes: readonly HeatShapeView[]): HeatShapeView {
  const pick = () => shapes.findIndex(({ media }) => window.matchMedia(media).matches)
  const [index, setIndex] = useState(pick)
  const latest = useRef(pick)
  latest.current = pick
  useEffect(() => {
    const changed = () => setIndex(latest.current())
    window.addEventListener('resize', changed)
    return () => window.removeEventListener('resize', changed)
  }, [])
  return (shapes[index] ?? shapes[0]) as HeatShapeView
}

/** This minute while the day is on; else none. */
function useNow({ from, to }: HeatFacts): Instant | undefined {
  const read = () => {
    const now = Math.round(Date.now() / MINUTE) * MINUTE
    return now >= from && now <= to ? instant(now) : undefined
  }
  const [now, setNow] = useState(read)
  // biome-ignore lint/correctness/useExhaustiveDependencies: `read` is made of these two
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout>
    const step = () => {
      setNow(read())
      timer = setTimeout(step, MINUTE - ((Date.now() + MINUTE / 2) % MINUTE) + 20)
    }
    step()
    return () => clearTimeout(timer)
  }, [from, to])
  return now
}
