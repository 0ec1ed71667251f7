'use client'
import { useState } from 'react'
import { minutes } from '@/lib/units'
import { heldEnds, holdEnds, holdStarts, inBox, inCooker, inOven, loggedHeld, loggedHoldEnds } from '../words/sheets'
import { AgoChoice, CookChoice } from './choice'
import { useSet } from './set-context'
import type { EntryDraft } from './set-feed'
import { Sheet } from './sheet'
import type { SheetProps } from './sheets'

const PLACES = [
  ['cooker', inCooker],
  ['oven', inOven],
  ['box', inBox],
] as const

/** The roast waits, kept hot. */
export function HoldSheet({ close }: SheetProps) {
  const { session, log } = useSet()
  const [cook, setCook] = useState(session.day.cooks[0]?.id ?? '')
  const [ago, setAgo] = useState(0)
  const held = session.told.holds.some((hold) => hold.cook === cook && hold.to === null)
  const say = (draft: EntryDraft, words: string) => {
    log(draft, words, minutes(ago))
    close()
  }
  const start = (place: string) => ({ kind: 'hold-start', cook, in: place })
  return (
    <Sheet title={held ? heldEnds : holdStarts} close={close}>
      <CookChoice cooks={session.day.cooks} value={cook} onChoose={setCook} />
      <AgoChoice value={ago} onChoose={setAgo} />
      <div className="foot">
        <div className="thumb">
          {held && (
            <button type="button" className="main" onClick={() => say({ kind: 'hold-end', cook }, loggedHoldEnds)}>
              {holdEnds}
            </button>
          )}
          {PLACES.map(([place, words]) => (
            <button key={place} type="button" onClick={() => say(start(place), loggedHeld(words.toLowerCase()))}>
              {words}
            </button>
          ))}
        </div>
      </div>
    </Sheet>
  )
}
