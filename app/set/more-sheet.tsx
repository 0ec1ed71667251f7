'use client'
import { GUIDE_OF, help, laptopsView, otherPages, otherScreens, presentersLine } from '../words/help-link'
import {
  cameraClock,
  fire,
  foodWords,
  hold,
  meal,
  more,
  note,
  probe,
  rehearseThisDay,
  soundCheck,
  toContinuity,
} from '../words/sheets'
import { useSet } from './set-context'
import { Sheet } from './sheet'
import type { SheetName, SheetProps } from './sheets'

const ACTIONS: readonly (readonly [SheetName, string])[] = [
  ['probe', probe],
  ['food', foodWords],
  ['hold', hold],
  ['meal', meal],
  ['note', note],
  ['sound', soundCheck],
  ['camera-clock', cameraClock],
]

/** From the board's own address. */
const LINKS = [
  ['set/rehearsal', rehearseThisDay],
  ['set/continuity', toContinuity],
  ['set/desk', laptopsView],
  ['set/presenter', presentersLine],
  ['day', otherPages],
] as const

/** What is told more seldom, and the way to the other screens. */
export function MoreSheet({ close, open }: SheetProps) {
  const { facts, snapshot } = useSet()
  const burns = facts.cooks.some((cook) => cook.burns)
  const actions = burns ? ([['fire', fire], ...ACTIONS] as const) : ACTIONS
  return (
    <Sheet title={more} close={close}>
      <nav className="board-links" aria-label={otherScreens}>
        {!snapshot.rehearsal &&
          LINKS.map(([href, words]) => (
            <a key={href} className="textlink" href={href}>
              {words}
            </a>
          ))}
        <a className="textlink" href={`/help/${GUIDE_OF.set}`}>
          {help}
        </a>
      </nav>
      <div className="foot">
        <div className="thumb two">
          {actions.map(([sheet, words]) => (
            <button key={sheet} type="button" onClick={() => open(sheet)}>
              {words}
            </button>
          ))}
        </div>
      </div>
    </Sheet>
  )
}
