'use client'
import { type TouchEvent, useEffect, useRef, useState } from 'react'
import {
  board,
  day,
  dayBlackOnWhite,
  duskWhiteOnBlack,
  duskWords,
  nobodyYet,
  notHereYet,
  pageCalls,
  pageFood,
  pageLine,
  pageLog,
  pageNow,
  thisPartOfBoard,
} from '../words/set'
import { AlertBand } from './alert-band'
import { CallsPage } from './calls-page'
import { LinkLine, LinkMark } from './link-line'
import { NextPage } from './next-page'
import { useSet } from './set-context'
import { Sheet } from './sheet'
import type { SheetName } from './sheets'
import { useGround } from './use-ground'
import { useRest } from './use-rest'
import { WhoAmI } from './who-am-i'

const PAGES = ['now', 'calls', 'line', 'food', 'log'] as const
type Page = (typeof PAGES)[number]
const NAMES: Readonly<Record<Page, string>> = {
  now: pageNow,
  calls: pageCalls,
  line: pageLine,
  food: pageFood,
  log: pageLog,
}

/** The set board of one phone. `lacks`: what this browser cannot do here, told once; `canTrust`: a trusted line would mend it. */
export function Board({ lacks, canTrust }: { lacks: string | null; canTrust?: boolean }) {
  const { me, now, clock, nameOf } = useSet()
  const [page, setPage] = useState<Page>('now')
  const [sheet, setSheet] = useState<SheetName | null>(null)
  const rest = useRest()
  const { dusk, turn } = useGround()
  const swipe = usePaging(page, setPage, sheet === null)
  const close = () => setSheet(null)
  return (
    <main id="main" className="set">
      <header className="bar">
        <span>{me === null ? nobodyYet : nameOf(me)}</span>
        <span className="time">{clock(now)}</span>
        <button type="button" className="ground" onClick={turn} aria-label={dusk ? dayBlackOnWhite : duskWhiteOnBlack}>
          {dusk ? day : duskWords}
        </button>
        <LinkMark />
      </header>
      <LinkLine lacks={lacks} canTrust={canTrust} />
      {me === null ? (
        <WhoAmI />
      ) : (
        <>
          <div className="pages" {...swipe}>
            <Turned page={page} rest={rest} open={setSheet} />
          </div>
          <nav className="tabs" aria-label={board}>
            {PAGES.map((id) => (
              <button
                key={id}
                type="button"
                aria-current={id === page ? 'page' : undefined}
                onClick={() => setPage(id)}
              >
                {NAMES[id]}
              </button>
            ))}
          </nav>
        </>
      )}
      {sheet && rest && <rest.OpenSheet sheet={sheet} close={close} open={setSheet} />}
      {sheet && !rest && (
        <Sheet title={notHereYet} close={close}>
          <OnItsWay />
        </Sheet>
      )}
      <AlertBand />
    </main>
  )
}

interface TurnedProps {
  readonly page: Page
  readonly rest: ReturnType<typeof useRest>
  readonly open: (sheet: SheetName) => void
}
function Turned({ page, rest, open }: TurnedProps) {
  if (page === 'now') return <NextPage open={open} />
  if (page === 'calls') return <CallsPage />
  if (!rest) return <OnItsWay />
  if (page === 'line') return <rest.LinePage />
  if (page === 'food') return <rest.FoodPage act={() => open('food')} />
  return <rest.LogPage />
}

const OnItsWay = () => (
  <p className="do" role="status">
    {thisPartOfBoard}
  </p>
)

const SWIPE_PX = 60
/** What somebody writes or reads over the page: turning it would throw that away. */
const isOverPage = (target: EventTarget | null) =>
  target instanceof Element && target.closest('.sheet, .alert, dialog, input, select, textarea') !== null
/** Where the arrow keys have work of their own. */
const hasArrows = (target: EventTarget | null) => target instanceof Element && target.matches('[role="slider"]')
/** Pages turn by swiping sideways, and with the arrow keys. */
function usePaging(page: Page, turn: (page: Page) => void, free: boolean) {
  const from = useRef<{ x: number; y: number } | null>(null)
  const go = (by: number) => {
    const next = PAGES[PAGES.indexOf(page) + by]
    if (next) turn(next)
  }
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!free || event.altKey || isOverPage(event.target) || hasArrows(event.target)) return
      if (event.key === 'ArrowRight') go(1)
      if (event.key === 'ArrowLeft') go(-1)
    }
    window.addEventListener('keydown', onKey)
    return () => window.removeEventListener('keydown', onKey)
  })
  return {
    onTouchStart: (event: TouchEvent) => {
      const touch = event.touches[0]
      from.current = touch && !isOverPage(event.target) ? { x: touch.clientX, y: touch.clientY } : null
    },
    onTouchEnd: (event: TouchEvent) => {
      const touch = event.changedTouches[0]
      if (!touch || !from.current) return
      const [dx, dy] = [touch.clientX - from.current.x, touch.clientY - from.current.y]
      if (Math.abs(dx) > SWIPE_PX && Math.abs(dx) > 2 * Math.abs(dy)) go(dx < 0 ? 1 : -1)
    },
  }
}
