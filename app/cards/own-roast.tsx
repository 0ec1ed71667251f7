'use client'
import { type FormEvent, useEffect, useRef, useState } from 'react'
import { inOneSystem } from '@/lib/card/one-system'
import type { OwnPlan } from '@/lib/card/own-plan'
import type { CardBasis, Filled } from '@/lib/card/own-wish'
import { tied } from '@/lib/export/tied'
import type { Problem } from '@/lib/refusals'
import type { UnitSystem } from '@/lib/units'
import { keepPages } from '../set/feed/offline'
import { Caution, Field } from '../ui/field'
import { rememberUnits } from '../ui/units-button'
import { ownHere, warmUp } from './own-here'
import type { OwnQuestions } from './own-questions'

interface OwnRoastProps {
  readonly basis: CardBasis
  readonly questions: OwnQuestions
  readonly units: UnitSystem
}
const NOT_KEPT = 'The forecast did not load. Open this page once more with a network, then it also works without.'

/** The card's cook for the reader's own roast, worked out in their own browser. */
export function OwnRoast({ basis, questions, units: chosen }: OwnRoastProps) {
  const [units, setUnits] = useState(chosen)
  const [filled, setFilled] = useState<Filled>(() => blank(questions))
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [plan, setPlan] = useState<OwnPlan | null>(null)
  const [working, setWorking] = useState(false)
  /** What is typed before the page's own script runs would be lost. */
  const [ready, setReady] = useState(false)
  const form = useRef<HTMLFormElement>(null)
  useEffect(() => {
    setReady(true)
    warmUp()
    keepPages([location.pathname]).then((kept) => kept && warmUp())
  }, [])

  async function work(event: FormEvent) {
    event.preventDefault()
    setWorking(true)
    const answer = await ownHere(basis, filled).catch(() => null)
    setWorking(false)
    setProblems(answer === null ? [{ pointer: '', sentence: NOT_KEPT }] : answer.ok ? [] : answer.problems)
    if (answer?.ok) setPlan(answer.value)
    else requestAnimationFrame(() => form.current?.querySelector<HTMLElement>('[aria-invalid]')?.focus())
  }
  function changeUnits() {
    const other = units === 'metric' ? 'us' : 'metric'
    rememberUnits(other)
    setUnits(other)
  }
  const set = (change: Partial<Filled>) => setFilled({ ...filled, ...change })
  const fault = (pointer: string) => problems.find((p) => p.pointer === pointer)?.sentence
  const us = units === 'us'
  const words = (text: string) => inOneSystem(text, units)
  const inUnits = (choices: OwnQuestions['done']) => choices.map(([value, text]) => [value, words(text)] as const)
  return (
    <section aria-labelledby="own-roast" className="own-roast">
      <div className="flex flex-wrap items-baseline justify-between gap-x-6">
        <h2 id="own-roast">Your own roast</h2>
        <button type="button" className="textlink min-h-[44px]" onClick={changeUnits}>
          {us ? 'Show °C and centimetres' : 'Show °F and inches'}
        </button>
      </div>
      <p className="no-print max-w-[60ch]">
        Say how thick yours is, and the same forecast that this card rests on gives your times. It runs on your device.
      </p>
      <noscript>
        <p>It needs JavaScript, which is switched off here; the table above does not.</p>
      </noscript>
      <form ref={form} className="no-print" onSubmit={work} noValidate>
        <fieldset disabled={!ready} className="own-form">
          <Field
            label="Thickness"
            value={filled.thickness}
            onChange={(thickness) => set({ thickness })}
            why={`At the thickest place as it lies, such as "${us ? '4.5 in' : '11 cm'}". ${words(questions.bounds)}`}
            fault={fault('/thickness')}
          />
          <Field
            label="Weight, if you know it"
            value={filled.weight}
            onChange={(weight) => set({ weight })}
            why={`Such as "${us ? '6 lb' : '2.8 kg'}"; it matters little.`}
            fault={fault('/weight')}
          />
          <Field
            label="Cooker"
            value={filled.cooker}
            onChange={(cooker) => set({ cooker })}
            options={questions.cookers}
            fault={fault('/cooker')}
          />
          <Field
            label="The meat is"
            value={filled.start}
            onChange={(start) => set({ start })}
            options={questions.starts}
          />
          <Field
            label="How done, when sliced"
            value={filled.done}
            onChange={(done) => set({ done })}
            options={inUnits(questions.done)}
          />
          {filled.done === 'core' && (
            <Field
              label="Middle when sliced"
              value={filled.core}
              onChange={(core) => set({ core })}
              why={`Such as "${us ? '140 °F' : '60 °C'}".`}
              fault={fault('/core')}
            />
          )}
          <Field
            label="Served at, if you like"
            value={filled.serve}
            onChange={(serve) => set({ serve })}
            why={'A time of day such as "19:30".'}
            fault={fault('/serve')}
          />
          <div className="self-end py-3">
            <button type="submit" className="btn main" disabled={working}>
              {working ? 'Working it out' : 'Work out my times'}
            </button>
            {fault('') && (
              <p className="says" role="alert">
                {fault('')}
              </p>
            )}
          </div>
        </fieldset>
      </form>
      <div aria-live="polite">{plan && <Plan plan={plan} words={(text) => tied(words(text))} />}</div>
    </section>
  )
}

const blank = ({ cooker, starts }: OwnQuestions): Filled => ({
  thickness: '',
  weight: '',
  start: starts[0]?.[0] ?? '',
  cooker,
  done: 'card',
  core: '',
  serve: '',
})

function Plan({ plan, words }: { plan: OwnPlan; words: (text: string) => string }) {
  return (
    <div className="own-plan">
      <h3>Your plan: {words(plan.of)}</h3>
      <p className="lead max-w-none! text-ink!">{words(plan.pull)}</p>
      <table className="card-table">
        <caption className="sr-only">Your times</caption>
        <thead>
          <tr>
            <th scope="col">do</th>
            <th scope="col">when</th>
            <th scope="col">how you know</th>
          </tr>
        </thead>
        <tbody>
          {plan.steps.map((step) => (
            <tr key={step.id}>
              <th scope="row">{step.what}</th>
              <td className="time" data-label="">
                {words(step.when)}
              </td>
              <td data-label="">{words(step.know)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {plan.says.map((sentence) => (
        <p key={sentence} className="mt-2 max-w-[66ch]">
          {words(sentence)}
        </p>
      ))}
      {plan.cautions.map((sentence) => (
        <Caution key={sentence}>{words(sentence)}</Caution>
      ))}
    </div>
  )
}
