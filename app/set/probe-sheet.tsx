'use client'
import { useState } from 'react'
import { minutes } from '@/lib/units'
import { checked, loggedProbe, moved, probeIn, probeWords, pulledOut, readsWrong, rightAgain } from '../words/sheets'
import { AgoChoice, Choice, CookChoice } from './choice'
import { probeOf, sensorName, sensorsOf } from './probes'
import { useSet } from './set-context'
import { Sheet } from './sheet'
import type { SheetProps } from './sheets'
import { useKeptCook } from './use-kept-cook'
import { useKept } from './use-set'

const FOUND = [
  ['in', probeIn],
  ['moved', moved],
  ['pulled-out', pulledOut],
  ['wrong', readsWrong],
  ['right', rightAgain],
  ['checked', checked],
] as const

/** What became of a probe: readings are believed, or not, from then on. */
export function ProbeSheet({ close }: SheetProps) {
  const { session, log } = useSet()
  const cooks = session.day.cooks
  const [cook, setCook] = useKeptCook()
  const [sensor, setSensor] = useKept<string>('emberslate-set-sensor', 'core')
  const [ago, setAgo] = useState(0)
  const probe = probeOf(session, cook, sensor)
  const state = probe === null ? 'not read yet' : probe.wrong ? 'reads wrong' : probe.out ? 'out of the meat' : 'in use'
  const say = (found: string, words: string) => {
    log(
      { kind: 'probe-check', cook, sensor, found },
      loggedProbe(sensorName(sensor), words.toLowerCase()),
      minutes(ago),
    )
    close()
  }
  return (
    <Sheet title={probeWords} close={close}>
      <CookChoice cooks={cooks} value={cook} onChoose={setCook} />
      <Choice
        name="Probe"
        value={sensor}
        options={sensorsOf(session, cook).map((one) => [one, sensorName(one)] as const)}
        onChoose={setSensor}
      />
      <p className="key-last">
        {sensorName(sensor)}: {state}.
      </p>
      <AgoChoice value={ago} onChoose={setAgo} />
      <div className="foot">
        <div className="thumb two">
          {FOUND.map(([found, words]) => (
            <button key={found} type="button" onClick={() => say(found, words)}>
              {words}
            </button>
          ))}
        </div>
      </div>
    </Sheet>
  )
}
