'use client'
import { useState } from 'react'
import type { Beside } from '@/lib/export/cut-face-beside'
import type { Drawing } from '@/lib/export/drawing'
import type { ShootDocument } from '@/lib/plan/shoot'
import { DrawingSvg, Figures } from '../ui/drawing'
import { Field } from '../ui/field'
import { send } from '../ui/send'
import { Working } from '../ui/working'
import { andAtAnotherHeat, anotherHeat, compare, insteadAt, planHasChanged, thePlan } from '../words/what-ifs'
import { lastsHere, otherHeat } from '../words/working'

/** "And at 110 °C?": the same cook at another heat, asked for when wanted, its slice beside the plan's. */
export function AnotherHeat(props: { document: ShootDocument; plan: Drawing; heats: readonly string[] }) {
  const [typed, setTyped] = useState('')
  const [beside, setBeside] = useState<Beside | null>(null)
  const [fault, setFault] = useState<string>()
  const [working, setWorking] = useState(false)
  const [asked, setAsked] = useState(props.document)
  async function ask(at: string) {
    setTyped(at)
    setWorking(true)
    setAsked(props.document)
    const answer = await send<Beside>('/api/cut-face', 'POST', { document: props.document, at })
    setWorking(false)
    setFault(answer.ok ? undefined : (answer.problems[0]?.sentence ?? answer.sentence))
    setBeside(answer.ok ? answer.value : null)
  }
  return (
    <section aria-label={anotherHeat} className="no-print">
      <h2 className="mt-8">{andAtAnotherHeat}</h2>
      <form
        className="mt-2 flex flex-wrap items-end gap-x-3 gap-y-1"
        onSubmit={(event) => {
          event.preventDefault()
          ask(typed)
        }}
      >
        {props.heats.map((heat) => (
          <button key={heat} type="button" className="btn quiet mb-3" disabled={working} onClick={() => ask(heat)}>
            {heat}
          </button>
        ))}
        <div className="w-40">
          <Field label={insteadAt} value={typed} onChange={setTyped} {...(fault ? { fault } : {})} />
        </div>
        <button type="submit" className="btn mb-3" disabled={working || typed.trim() === ''}>
          {compare}
        </button>
      </form>
      <Working what={working ? otherHeat : null} lasts={lastsHere} />
      {!working && beside && asked !== props.document && <p className="small">{planHasChanged}</p>}
      {beside && <Pair plan={props.plan} beside={beside} />}
    </section>
  )
}

function Pair({ plan, beside }: { plan: Drawing; beside: Beside }) {
  return (
    <div>
      <div className="cols-2">
        <figure className="m-0">
          <figcaption className="font-bold">{thePlan}</figcaption>
          <DrawingSvg drawing={plan} />
        </figure>
        <figure className="m-0">
          <figcaption className="font-bold">{beside.title}</figcaption>
          <DrawingSvg drawing={beside.drawing} />
        </figure>
      </div>
      <ul className="mt-2 list-none p-0">
        {beside.says.map((sentence) => (
          <li key={sentence} className="border-b border-rule py-2">
            {sentence}
          </li>
        ))}
      </ul>
      <Figures tables={[beside.table, ...beside.drawing.tables]} />
    </div>
  )
}
