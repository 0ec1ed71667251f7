'use client'
import { useState } from 'react'
import { minutes } from '@/lib/units'
import {
  fireFed,
  fuelPut,
  lidOpen,
  lidShut,
  logged,
  theFire,
  ventsOpen,
  ventsShut,
  writeWeightInSuch,
} from '../words/sheets'
import { AgoChoice, CookChoice } from './choice'
import { useSet } from './set-context'
import { Sheet } from './sheet'
import type { SheetProps } from './sheets'

const DID = [
  ['lid-open', lidOpen],
  ['lid-shut', lidShut],
  ['vents-open', ventsOpen],
  ['vents-shut', ventsShut],
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
    log({ kind: 'fire', cook, did, ...more }, logged(words.toLowerCase()), minutes(ago))
    close()
  }
  return (
    <Sheet title={theFire} close={close}>
      <CookChoice cooks={cooks} value={cook} onChoose={setCook} />
      <AgoChoice value={ago} onChoose={setAgo} />
      <label className="line">
        {fuelPut(unit)}
        <input
          value={fuel}
          inputMode="decimal"
          aria-invalid={fault}
          onChange={(event) => setFuel(event.target.value)}
        />
        {fault && <span className="says">{writeWeightInSuch(unit)}</span>}
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
            onClick={() => say('fed', fireFed, fuel === '' ? {} : { fuel: `${fuel.replace(',', '.')} ${unit}` })}
          >
            {fireFed}
          </button>
        </div>
      </div>
    </Sheet>
  )
}
