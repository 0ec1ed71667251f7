'use client'
import { useSet } from './set-context'
import { Sheet } from './sheet'
import type { SheetName, SheetProps } from './sheets'

const ACTIONS: readonly (readonly [SheetName, string])[] = [
  ['probe', 'Probe'],
  ['food', 'Food'],
  ['hold', 'Hold'],
  ['meal', 'Meal'],
  ['note', 'Note'],
  ['sound', 'Sound check'],
  ['camera-clock', 'Camera clock'],
]

/** What is told more seldom. */
export function MoreSheet({ close, open }: SheetProps) {
  const { facts, snapshot } = useSet()
  const burns = facts.cooks.some((cook) => cook.burns)
  const actions = burns ? ([['fire', 'Fire'], ...ACTIONS] as const) : ACTIONS
  return (
    <Sheet title="More" close={close}>
      {!snapshot.rehearsal && (
        <a className="textlink" href="set/rehearsal">
          Rehearse this day: an invented one is played, and nothing is sent
        </a>
      )}
      {!snapshot.rehearsal && (
        <a className="textlink" href="set/continuity">
          Continuity: how each shot looked, with photographs
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
