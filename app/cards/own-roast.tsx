'use client'
import { type FormEvent, useEffect, useRef, useState } from 'react'
import { inOneSystem } from '@/lib/card/one-system'
import type { OwnPlan } from '@/lib/card/own-plan'
import type { CardBasis, Filled } from '@/lib/card/own-wish'
import { tied } from '@/lib/export/tied'
import { asRead } from '@/lib/plan/as-read'
import type { Problem } from '@/lib/refusals'
import type { UnitSystem } from '@/lib/units'
import { keepPages } from '../set/feed/offline'
import { Caution, Field } from '../ui/field'
import { useReadersWay } from '../ui/reader'
import { rememberUnits } from '../ui/units-button'
import {
  cookerWords,
  doWords,
  howDoneWhenSliced,
  howYouKnow,
  meatIs,
  middleWhenSliced,
  needsScript,
  notLoaded,
  ownRoastLead,
  servedAtIfYouLike,
  serveWhy,
  showMetric,
  showUs,
  suchAs,
  thicknessWhy,
  thicknessWords,
  weightIfYouKnow,
  weightWhy,
  whenWords,
  workingItOut,
  workOutMyTimes,
  yourOwnRoast,
  yourPlan,
  yourTimes,
} from '../words/own-roast'
import { ownHere, warmUp } from './own-here'
import type { OwnQuestions } from './own-questions'

interface OwnRoastProps {
  readonly basis: CardBasis
  readonly questions: OwnQuestions
  readonly units: UnitSystem
}

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
    setProblems(answer === null ? [{ pointer: '', sentence: notLoaded }] : answer.ok ? [] : answer.problems)
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
  const way = useReadersWay()
  const words = (text: string) => asRead(inOneSystem(text, units), way)
  return (
    <section aria-labelledby="own-roast" className="own-roast">
      <div className="flex flex-wrap items-baseline justify-between gap-x-6">
        <h2 id="own-roast">{yourOwnRoast}</h2>
        <button type="button" className="textlink min-h-[44px]" onClick={changeUnits}>
          {us ? showMetric : showUs}
        </button>
      </div>
      <p className="no-print max-w-[60ch]">{ownRoastLead}</p>
      <noscript>
        <p>{needsScript}</p>
      </noscript>
      <form ref={form} className="no-print" onSubmit={work} noValidate>
        <fieldset disabled={!ready} className="own-form">
          <OwnFields questions={questions} filled={filled} set={set} us={us} fault={fault} words={words} />
          <div className="self-end py-3">
            <button type="submit" className="btn main" disabled={working}>
              {working ? workingItOut : workOutMyTimes}
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

interface FieldsProps {
  readonly questions: OwnQuestions
  readonly filled: Filled
  readonly set: (change: Partial<Filled>) => void
  readonly us: boolean
  readonly fault: (pointer: string) => string | undefined
  readonly words: (text: string) => string
}
function OwnFields({ questions, filled, set, us, fault, words }: FieldsProps) {
  return (
    <>
      <Field
        label={thicknessWords}
        value={filled.thickness}
        onChange={(thickness) => set({ thickness })}
        why={thicknessWhy(us ? '4.5 in' : '11 cm', words(questions.bounds))}
        fault={fault('/thickness')}
      />
      <Field
        label={weightIfYouKnow}
        value={filled.weight}
        onChange={(weight) => set({ weight })}
        why={weightWhy(us ? '6 lb' : '2.8 kg')}
        fault={fault('/weight')}
      />
      <Field
        label={cookerWords}
        value={filled.cooker}
        onChange={(cooker) => set({ cooker })}
        options={questions.cookers}
        fault={fault('/cooker')}
      />
      <Field label={meatIs} value={filled.start} onChange={(start) => set({ start })} options={questions.starts} />
      <Field
        label={howDoneWhenSliced}
        value={filled.done}
        onChange={(done) => set({ done })}
        options={questions.done.map(([value, text]) => [value, words(text)] as const)}
      />
      {filled.done === 'core' && (
        <Field
          label={middleWhenSliced}
          value={filled.core}
          onChange={(core) => set({ core })}
          why={suchAs(us ? '140 °F' : '60 °C')}
          fault={fault('/core')}
        />
      )}
      <Field
        label={servedAtIfYouLike}
        value={filled.serve}
        onChange={(serve) => set({ serve })}
        why={serveWhy}
        fault={fault('/serve')}
      />
    </>
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
      <h3>{yourPlan(words(plan.of))}</h3>
      <p className="lead max-w-none! text-ink!">{words(plan.pull)}</p>
      <table className="card-table">
        <caption className="sr-only">{yourTimes}</caption>
        <thead>
          <tr>
            <th scope="col">{doWords}</th>
            <th scope="col">{whenWords}</th>
            <th scope="col">{howYouKnow}</th>
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
