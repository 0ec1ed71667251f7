'use client'

import { type KeyboardEvent, type PointerEvent, type ReactNode, useState } from 'react'
import type { DrawingAxis } from '@/lib/export/drawing'
import { type Readout, readoutWords } from '@/lib/export/readout-words'

/** Minutes that a key moves the reading line. */
const STEPS: Record<string, number> = {
  ArrowRight: 5,
  ArrowDown: 5,
  ArrowLeft: -5,
  ArrowUp: -5,
  PageDown: 30,
  PageUp: -30,
}
interface Props {
  readonly readout: Readout
  readonly axis: DrawingAxis
  /** The picture's own size, px. */
  readonly size: { readonly width: number; readonly height: number }
  readonly children: ReactNode
}

/** Any minute of the picture in words, by pointer or arrow keys. */
export function HeatLineReadout({ readout, axis, size, children }: Props) {
  const [index, setIndex] = useState<number | null>(null)
  const last = readout.minutes
  const at =
    index ??
    Math.max(
      0,
      readout.probe.findIndex((probe) => probe !== null),
    )
  const share = (axis.start + (at / last) * (axis.end - axis.start)) / (axis.standing ? size.height : size.width)
  const move = (to: number) => setIndex(Math.min(last, Math.max(0, to)))
  const onKeyDown = (event: KeyboardEvent) => {
    const to = event.key === 'Home' ? 0 : event.key === 'End' ? last : at + (STEPS[event.key] ?? 0)
    if (to === at && !(event.key in STEPS)) return
    event.preventDefault()
    move(event.shiftKey && event.key in STEPS ? at + Math.sign(STEPS[event.key] ?? 0) : to)
  }
  const point = (event: PointerEvent<HTMLDivElement>) => {
    const box = event.currentTarget.getBoundingClientRect()
    const along = axis.standing ? (event.clientY - box.top) / box.height : (event.clientX - box.left) / box.width
    const px = along * (axis.standing ? size.height : size.width)
    move(Math.round(((px - axis.start) / (axis.end - axis.start)) * last))
  }
  return (
    <div>
      <div className="relative" style={{ maxWidth: size.width }}>
        {children}
        {index !== null && (
          <div
            aria-hidden="true"
            className={`pointer-events-none absolute bg-ink ${axis.standing ? 'inset-x-0 h-px' : 'inset-y-0 w-px'}`}
            style={axis.standing ? { top: `${share * 100}%` } : { left: `${share * 100}%` }}
          />
        )}
        <div
          role="slider"
          tabIndex={0}
          aria-label="Time on the heat line"
          aria-orientation={axis.standing ? 'vertical' : 'horizontal'}
          aria-valuemin={0}
          aria-valuemax={last}
          aria-valuenow={at}
          aria-valuetext={readoutWords(readout, at)}
          className="absolute inset-0"
          style={{ touchAction: 'pan-x pan-y' }}
          onKeyDown={onKeyDown}
          onPointerDown={point}
          onPointerMove={(event) => event.pointerType === 'mouse' && point(event)}
        />
      </div>
      <p className={`small min-h-6 ${axis.standing ? 'sticky bottom-0 bg-paper py-1' : ''}`} aria-hidden="true">
        {index === null
          ? 'Point at the picture, or move along it with the arrow keys, to read any minute.'
          : readoutWords(readout, index)}
      </p>
    </div>
  )
}
