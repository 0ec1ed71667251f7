'use client'
import { useState } from 'react'
import { minutes } from '@/lib/units'
import { AgoChoice, CookChoice } from './choice'
import { useSet } from './set-context'
import { Sheet } from './sheet'
import type { SheetProps } from './sheets'

const DID = [
  ['lid-open', 'Lid open'],
  ['lid-shut', 'Lid shut'],
  ['vents-open', 'Vents open'],
  ['vents-shut', 'Vents shut'],
] as const
const FUEL = /^\d{1,2}([.,]\d{1,2})?$/

/** Work on the fire: the forecast hears of it. */
export function FireSheet({ close }: SheetProps) {
  const { facts, units, log } = useSet()
  const cooks = facts.cooks.filter(({ burns }) => burns)
  const [cook, setCook] = useState(cooks[0]?.id ?? '')
  const [fuel, setFuel] = useState('')
  const [ago, setAgo] = useState(0)
  const unit = units === 'us' ? 'lb' : 'kg'
  const fault = fuel !== '' && !FUEL.test(fuel)
  const say = (did: string, words: string, more = {}) => {
    log({ kind: 'fire', cook, did, ...more }, `Logged: ${words.toLowerCase()}.`, minutes(ago))
    close()
  }
  return (
    <Sheet title="The fire" close={close}>
      <CookChoice cooks={cooks} value={cook} onChoose={setCook} />
      <AgoChoice value={ago} onChoose={setAgo} />
      <label className="line">
        Fuel put on, {unit}, if it was weighed
        <input
          value={fuel}
          inputMode="decimal"
          aria-invalid={fault}
          onChange={(event) => setFuel(event.target.value)}
        />
        {fault && <span className="says">Write a weight in {unit}, such as “0.4”.</span>}
      </label>
      <div className="foot">
        <div className="thumb two">
          {DID.map(([did, words]) => (
            <button key={did} type="button" onClick={() => say(did, words)}>
              {words}
            </button>
          ))}
          <button
            type="button"
            className="main wide"
            disabled={fault}
            onClick={() => say('fed', 'Fire fed', fuel === '' ? {} : { fuel: `${fuel.replace(',', '.')} ${unit}` })}
          >
            Fire fed
          </button>
        </div>
      </div>
    </Sheet>
  )
}
