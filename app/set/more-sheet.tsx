'use client'
import {
  cameraClock,
  continuityHowEachShotLooked,
  fire,
  foodWords,
  hold,
  meal,
  more,
  note,
  probe,
  rehearseThisDayInventedOne,
  soundCheck,
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

/** What is told more seldom. */
export function MoreSheet({ close, open }: SheetProps) {
  const { facts, snapshot } = useSet()
  const burns = facts.cooks.some((cook) => cook.burns)
  const actions = burns ? ([['fire', fire], ...ACTIONS] as const) : ACTIONS
  return (
    <Sheet title={more} close={close}>
      {!snapshot.rehearsal && (
        <a className="textlink" href="set/rehearsal">
          {rehearseThisDayInventedOne}
        </a>
      )}
      {!snapshot.rehearsal && (
        <a className="textlink" href="set/continuity">
          {continuityHowEachShotLooked}
        </a>
      )}
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
