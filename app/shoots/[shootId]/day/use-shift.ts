'use client'
import { type KeyboardEvent, type PointerEvent, useCallback, useEffect, useRef, useState } from 'react'

const MINUTE = 60_000
const STEPS: Record<string, number> = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }
const LONG_STEP = 5
/** A press that trembles is no drag. */
const SLACK_PX = 4

interface Shift {
  /** Where the shot stands, ms; what is tried is counted from it. */
  readonly from: number
  readonly least: number
  readonly most: number
  /** Told while it moves; null when it is let go without effect. */
  readonly onTry: (at: number | null) => void
  readonly onSet: (at: number) => void
}

/** One handle on the time axis: drawn by mouse or finger, moved by the arrow keys, set by Enter, let go by Escape. */
export function useShift({ from, least, most, onTry, onSet }: Shift) {
  const [at, setAt] = useState<number | null>(null)
  /** Where it stood when it was taken up: what is tried is laid out at once, and moves `from` along. */
  const origin = useRef(from)
  const drag = useRef<{ x: number; at: number; msPerPx: number; moved: boolean } | null>(null)
  const isSet = useRef(false)
  // Once set, the handle follows the shot as soon as the day has been laid out with it.
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new place ends the trial of the old one
  useEffect(() => {
    if (isSet.current) setAt(null)
    isSet.current = false
  }, [from])
  const hold = useCallback(
    (to: number | null) => {
      isSet.current = false
      if (at === null) origin.current = from
      const kept = to === null ? null : Math.min(most, Math.max(least, Math.round(to / MINUTE) * MINUTE))
      setAt(kept)
      onTry(kept)
    },
    [at, from, least, most, onTry],
  )
  const finish = (to: number | null) => {
    if (to === null || to === origin.current) return hold(null)
    isSet.current = true
    if (to === from) setAt(null)
    onSet(to)
  }
  const onKeyDown = (event: KeyboardEvent) => {
    const step = STEPS[event.key]
    if (step !== undefined) hold((at ?? from) + step * MINUTE * (event.shiftKey ? LONG_STEP : 1))
    else if (event.key === 'Enter' || event.key === ' ') finish(at)
    else if (event.key === 'Escape') hold(null)
    else return
    event.preventDefault()
  }
  const onPointerDown = (event: PointerEvent<HTMLElement>) => {
    const track = event.currentTarget.parentElement?.getBoundingClientRect()
    if (!track || event.button !== 0) return
    event.currentTarget.setPointerCapture(event.pointerId)
    drag.current = { x: event.clientX, at: at ?? from, msPerPx: (most - least) / track.width, moved: false }
  }
  const onPointerMove = (event: PointerEvent<HTMLElement>) => {
    const held = drag.current
    if (!held) return
    const px = event.clientX - held.x
    if (!held.moved && Math.abs(px) < SLACK_PX) return
    held.moved = true
    hold(held.at + px * held.msPerPx)
  }
  const onPointerUp = () => {
    const moved = drag.current?.moved
    drag.current = null
    if (moved) finish(at)
  }
  const onPointerCancel = () => {
    drag.current = null
    hold(null)
  }
  const onBlur = () => at !== null && !isSet.current && !drag.current && hold(null)
  return { at, handle: { onKeyDown, onPointerDown, onPointerMove, onPointerUp, onPointerCancel, onBlur } }
}
