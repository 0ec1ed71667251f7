'use client'
import { type KeyboardEvent, type PointerEvent, type ReactNode, useEffect, useId, useRef } from 'react'
import type { Drawing } from '@/lib/export/drawing'
import { clockAt } from '@/lib/export/heat-line-clock'
import type { HeatFacts } from '@/lib/export/heat-line-facts'
import { readoutAt } from '@/lib/export/heat-line-readout'
import type { Instant } from '@/lib/units'
import { keysOfHeatLine, timeOnHeatLine } from '../words/heat-line'

interface TimeProps {
  readonly facts: HeatFacts
  readonly drawing: Drawing
  /** Null until somebody has chosen. */
  readonly at: Instant | null
  readonly chosen: Instant
  readonly choose: (to: number) => void
  readonly onKeyDown: (event: KeyboardEvent) => void
  readonly focus: boolean
  readonly children: ReactNode
}

/** A time on the picture: a slider over all of it, and a line where it stands. */
export function HeatLineTime({ facts, drawing, at, chosen, choose, onKeyDown, focus, children }: TimeProps) {
  const keys = useId()
  const slider = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (focus) slider.current?.focus()
  }, [focus])
  const { axis, plot, width, height } = drawing
  if (!axis || !plot) return <>{children}</>
  const length = axis.standing ? height : width
  const share = (axis.start + ((chosen - axis.from) / (axis.to - axis.from)) * (axis.end - axis.start)) / length
  const point = (event: PointerEvent<HTMLDivElement>) => {
    const box = event.currentTarget.getBoundingClientRect()
    const along = axis.standing ? (event.clientY - box.top) / box.height : (event.clientX - box.left) / box.width
    const within = (along * length - axis.start) / (axis.end - axis.start)
    choose(axis.from + Math.min(1, Math.max(0, within)) * (axis.to - axis.from))
  }
  const percent = (px: number, of: number) => `${(px / of) * 100}%`
  const line = axis.standing
    ? { top: `${share * 100}%`, left: percent(plot.top, width), width: percent(plot.bottom - plot.top, width) }
    : { left: `${share * 100}%`, top: percent(plot.top, height), height: percent(plot.bottom - plot.top, height) }
  return (
    <div className="relative" style={{ maxWidth: width * 1.3 }}>
      {children}
      {at !== null && share >= 0 && share <= 1 && (
        <div aria-hidden="true" className={`heat-time ${axis.standing ? 'across' : ''}`} style={line}>
          <b>{clockAt(facts.clock, chosen)}</b>
        </div>
      )}
      <div
        ref={slider}
        role="slider"
        tabIndex={0}
        aria-label={timeOnHeatLine}
        aria-describedby={keys}
        aria-orientation={axis.standing ? 'vertical' : 'horizontal'}
        aria-valuemin={Math.round(Math.min(axis.from, chosen) / 60_000)}
        aria-valuemax={Math.round(Math.max(axis.to, chosen) / 60_000)}
        aria-valuenow={Math.round(chosen / 60_000)}
        aria-valuetext={readoutAt(facts, chosen)}
        className="absolute inset-0"
        style={{ touchAction: axis.standing ? 'pan-x pan-y' : 'pan-y' }}
        onKeyDown={onKeyDown}
        onPointerDown={point}
        onPointerMove={(event) => (event.pointerType === 'mouse' || !axis.standing) && point(event)}
      />
      <p id={keys} className="sr-only">
        {keysOfHeatLine}
      </p>
    </div>
  )
}
