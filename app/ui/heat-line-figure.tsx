'use client'
import './heat-line.css'
import { type ComponentType, type ReactNode, useEffect, useState } from 'react'
import type { Drawing } from '@/lib/export/drawing'
import { pointOrPress, readAnyMinute } from '../words/heat-line'
import { DrawingSvg, Figures } from './drawing'
import type { HandProps } from './heat-line-hand'
import type { HeatPictures } from './heat-line-shapes'

type Hand = ComponentType<HandProps>
let fetched: Hand | null = null

interface FigureProps {
  readonly pictures: HeatPictures
  /** What lies over the picture that is shown. */
  readonly over?: (drawing: Drawing) => ReactNode
}
/** The heat line. Reading any minute, looking closer and the line of now are fetched when somebody is about to, or the day is on. */
export function HeatLineFigure({ pictures, over }: FigureProps) {
  const { facts, shapes, printed, tables } = pictures
  const [Hand, setHand] = useState<Hand | null>(() => fetched)
  const [asked, setAsked] = useState(false)
  const fetchHand = () => {
    if (Hand) return
    import('./heat-line-hand').then(
      ({ HeatLineHand }) => {
        fetched = HeatLineHand
        setHand(() => HeatLineHand)
      },
      () => {},
    )
  }
  // biome-ignore lint/correctness/useExhaustiveDependencies: once; whether the day is on is asked when the page opens
  useEffect(() => {
    const now = Date.now()
    if (now >= facts.from && now <= facts.to) fetchHand()
  }, [])
  return (
    <>
      <div className={printed ? 'print:hidden' : undefined} onPointerEnter={fetchHand}>
        {Hand ? (
          <Hand facts={facts} shapes={shapes} over={over} focus={asked} />
        ) : (
          <>
            {shapes.map(({ show, drawing }) => (
              <figure key={show} className={`relative m-0 ${show}`}>
                <DrawingSvg drawing={drawing} grows />
                {over?.(drawing)}
              </figure>
            ))}
            <div className="heat-keys">
              <button
                type="button"
                className="textlink"
                onClick={() => {
                  setAsked(true)
                  fetchHand()
                }}
              >
                {readAnyMinute}
              </button>
              <p className="small">{pointOrPress}</p>
            </div>
          </>
        )}
      </div>
      {printed && (
        <figure className="heat-paper m-0 hidden print:block">
          <DrawingSvg drawing={printed} grows />
        </figure>
      )}
      <Figures tables={tables} />
    </>
  )
}
