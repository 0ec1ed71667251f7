'use client'
import { type ReactNode, useEffect, useRef, useState } from 'react'
import type { CheckedClaim } from '@/lib/card/claim'
import type { CardSentence, PrintableStep } from '@/lib/card/printable-steps'
import { removeAt, setAt, valueAt } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import { Fault } from '../../../ui/fault'
import { newWriteId } from '../../../ui/send'
import { UndoAt } from '../../../ui/undo-line'
import {
  addSentence,
  authorsReason,
  changeWords,
  doNotPrintIt,
  done,
  firstLine,
  isCheckedAsYouWrite,
  keeping,
  leaveOut,
  leftOut,
  leftOutOfCard,
  myReason,
  notPrinted,
  printItAsMine,
  printMine,
  sentenceOfYourOwn,
  titleWords,
  trueTaken,
  useThisSentence,
  wordsOf,
  yourOwn,
} from '../../../words/card'
import { SaveLine } from '../../save-line'
import { useActions } from '../../use-actions'
import { useSaved } from '../../use-saved'
import { BorneOut, Finding, Marked, Publications } from './finding'
import { PublishFields } from './publish-fields'
import { RecipeFields } from './recipe-fields'
import { VerdictMark } from './verdict-mark'

/** Title, servings and first line stand outside the steps; they are not printed against the check. */
const isStep = (id: string) => !['title', 'serves', 'intro', 'storage'].includes(id)

type Override = { sentence: string; reason: string }
type StepDocument = { id: string; text: string; override?: Override[] }
const stepsOf = (document: ShootDocument) => (valueAt(document, '/card/steps') as StepDocument[] | undefined) ?? []

const overridesOf = (document: ShootDocument, id: string) => stepsOf(document).find((s) => s.id === id)?.override ?? []

/** Title and intro are texts of their own; everything else is a step that takes the place of the written one. */
function withText(document: ShootDocument, id: string, text: string, override: Override[]): ShootDocument {
  if (!isStep(id)) return setAt(document, `/card/${id}`, text)
  const steps = stepsOf(document)
  const step: StepDocument = override.length > 0 ? { id, text, override } : { id, text }
  const known = steps.some((s) => s.id === id)
  return setAt(document, '/card/steps', known ? steps.map((s) => (s.id === id ? step : s)) : [...steps, step])
}

/** An own sentence goes; one that the plan wrote keeps its place, without words. */
function withoutText(document: ShootDocument, id: string): ShootDocument {
  if (!id.startsWith('own-')) return withText(document, id, '', [])
  const left = stepsOf(document).filter((step) => step.id !== id)
  return left.length === 0 ? removeAt(document, '/card/steps') : setAt(document, '/card/steps', left)
}

/** What the recipe's own fields show the faults of. */
const RECIPE_AT = ['serves', 'ingredients', 'allergens', 'storage', 'kit'].map((key) => `/card/${key}`)

interface CardDeskProps {
  shootId: string
  version: number
  document: ShootDocument
  steps: readonly PrintableStep[]
  /** The publications that the findings name, by their ids. */
  sources: Record<string, string>
  /** The ids of all steps, with those left out because their words were taken out. */
  order: readonly string[]
}

const emptyStep = (id: string): PrintableStep => ({ id, by: 'author', sentences: [] })
/** All texts in reading order; a step just added or emptied keeps its place, so that its words can be written. */
function allSteps({ steps, order }: CardDeskProps, document: ShootDocument): readonly PrintableStep[] {
  const placed = order.map((id) => steps.find((step) => step.id === id) ?? emptyStep(id))
  const written = stepsOf(document)
  for (const [i, { id }] of written.entries()) {
    if (order.includes(id)) continue
    const before = placed.findIndex((step) => step.id === written[i - 1]?.id)
    placed.splice(before + 1, 0, emptyStep(id))
  }
  return [
    ...steps.filter((step) => !isStep(step.id) && step.id !== 'storage'),
    ...placed,
    ...steps.filter((step) => step.id === 'storage'),
  ]
}

/** Where the words of a text stand in the document. */
function pointerOf(document: ShootDocument, id: string): string {
  return isStep(id) ? `/card/steps/${stepsOf(document).findIndex((step) => step.id === id)}` : `/card/${id}`
}
const under = (pointer: string, at: string) => pointer === at || pointer.startsWith(`${at}/`)

/** Every sentence of the card with what the check says of it; the author changes words, the findings follow. */
export function CardDesk(props: CardDeskProps) {
  const saved = useSaved(props.shootId, props.version, props.document)
  const { document, change, problems } = saved
  const [open, setOpen] = useState<string | null>(null)
  const taken = useActions(document, change)
  const write: Write = (id, text, override = overridesOf(document, id)) =>
    change(withText(document, id, text, override))
  const instead: Instead = (said, id, text, override) => taken.act(said, withText(document, id, text, override), id)
  const hands = { document, write, instead }
  const leave = (id: string) => {
    setOpen(null)
    taken.act(leftOut(nameOf(id)), withoutText(document, id), id.startsWith('own-') ? 'own' : id)
  }
  const addStep = () => {
    const id = `own-${newWriteId().slice(-6).toLowerCase()}`
    write(id, sentenceOfYourOwn)
    setOpen(id)
  }
  const faultOf = (id: string) => problems.find(({ pointer }) => under(pointer, pointerOf(document, id)))?.sentence
  const shownAt = [...RECIPE_AT, '/publish', ...(open ? [pointerOf(document, open)] : [])]
  return (
    <Publications value={props.sources}>
      <SaveLine saved={saved} problems={problems.filter(({ pointer }) => !shownAt.some((at) => under(pointer, at)))} />
      {allSteps(props, document).map((step) => (
        <section key={step.id} aria-label={nameOf(step.id)} className="written">
          <div className="written-head">
            <h2>{nameOf(step.id)}</h2>
            {step.id !== 'serves' && (
              <button
                type="button"
                className="textlink"
                aria-expanded={open === step.id}
                onClick={() => setOpen(open === step.id ? null : step.id)}
              >
                {open === step.id ? done : changeWords}
              </button>
            )}
          </div>
          {open === step.id && (
            <Editor step={step} document={document} write={write} fault={faultOf(step.id)}>
              {isStep(step.id) && (
                <button type="button" className="textlink justify-self-start" onClick={() => leave(step.id)}>
                  {leaveOut}
                </button>
              )}
            </Editor>
          )}
          <UndoAt taken={taken} at={step.id} />
          {isLeftOut(document, step) && taken.last?.at !== step.id && <p className="small">{leftOutOfCard}</p>}
          {(isLeftOut(document, step) ? [] : step.sentences).map((sentence, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the same sentence may stand there twice
            <Sentence key={`${i} ${sentence.text}`} sentence={sentence} step={step} {...hands} />
          ))}
        </section>
      ))}
      <UndoAt taken={taken} at="own" />
      <button type="button" className="btn mt-4" onClick={addStep}>
        {addSentence}
      </button>
      <RecipeFields document={document} change={change} taken={taken} problems={problems} />
      <PublishFields document={document} change={change} problems={problems} />
    </Publications>
  )
}

const NAMES: Record<string, string> = { title: titleWords, intro: firstLine, storage: keeping }
const nameOf = (id: string) =>
  NAMES[id] ?? (id.startsWith('own-') ? yourOwn : id.replaceAll('-', ' ').replace(/^./, (c) => c.toUpperCase()))

type Write = (id: string, text: string, override?: Override[]) => void
/** Other words in the place of those that stand there, with a way back. */
type Instead = (said: string, id: string, text: string, override: Override[]) => void
interface PartProps {
  step: PrintableStep
  document: ShootDocument
  write: Write
}
/** What stands in the document now, else what the check last saw. */
function currentText(document: ShootDocument, step: PrintableStep): string {
  if (!isStep(step.id)) return (valueAt(document, `/card/${step.id}`) as string | undefined) ?? joined(step)
  return stepsOf(document).find((s) => s.id === step.id)?.text ?? joined(step)
}
const isLeftOut = (document: ShootDocument, step: PrintableStep) =>
  isStep(step.id) && currentText(document, step).trim() === ''
const joined = (step: PrintableStep) => step.sentences.map((s) => s.text).join(' ')

function Editor(props: PartProps & { fault: string | undefined; children: ReactNode }) {
  const { step, document, write, fault } = props
  const words = useRef<HTMLTextAreaElement>(null)
  useEffect(() => words.current?.focus(), [])
  return (
    <div className={fault ? 'field wrong' : 'field'}>
      <label htmlFor={`words-${step.id}`} className="sr-only">
        {wordsOf(nameOf(step.id))}
      </label>
      <textarea
        id={`words-${step.id}`}
        ref={words}
        rows={3}
        aria-invalid={fault ? true : undefined}
        aria-describedby={fault ? `fault-${step.id} why-${step.id}` : `why-${step.id}`}
        value={currentText(document, step)}
        onChange={(event) => write(step.id, event.target.value)}
      />
      <Fault id={`fault-${step.id}`}>{fault}</Fault>
      <span className="why" id={`why-${step.id}`}>
        {isCheckedAsYouWrite}
      </span>
      {props.children}
    </div>
  )
}

type SentenceProps = PartProps & { sentence: CardSentence; instead: Instead }
function Sentence({ sentence, step, document, write, instead }: SentenceProps) {
  const shown = sentence.claims.filter((claim) => claim.finding !== 'borne-out')
  const fine = sentence.claims.length - shown.length
  const contradicted = sentence.claims.find((claim) => claim.finding === 'contradicted')
  const worst = contradicted ?? shown[0] ?? sentence.claims[0]
  return (
    <article className="finding">
      <p className="said">
        <Marked sentence={sentence} />
      </p>
      {worst ? <VerdictMark finding={worst.finding} /> : <span />}
      <div>
        {shown.map((claim) => (
          <Finding key={claim.id + claim.start} claim={claim} own={sentence.prints === 'own'} />
        ))}
        {fine > 0 && <BorneOut claims={sentence.claims.filter((claim) => claim.finding === 'borne-out')} />}
        {contradicted && step.id !== 'serves' && (
          <WayOut
            claim={contradicted}
            sentence={sentence}
            step={step}
            document={document}
            write={write}
            instead={instead}
          />
        )}
      </div>
    </article>
  )
}

function WayOut({ claim, sentence, step, document, write, instead }: SentenceProps & { claim: CheckedClaim }) {
  const [reason, setReason] = useState<string | null>(null)
  const text = currentText(document, step)
  const others = overridesOf(document, step.id).filter((o) => o.sentence !== sentence.text)
  return (
    <div>
      {claim.trueSentence && <p className="true">“{claim.trueSentence}”</p>}
      <p className="flex flex-wrap gap-x-6">
        {claim.trueSentence && (
          <button
            type="button"
            className="textlink"
            onClick={() =>
              instead(
                trueTaken,
                step.id,
                text.replace(sentence.text, () => claim.trueSentence ?? ''),
                others,
              )
            }
          >
            {useThisSentence}
          </button>
        )}
        {isStep(step.id) && sentence.reason === null && (
          <button type="button" className="textlink" onClick={() => setReason('')}>
            {printMine}
          </button>
        )}
        {sentence.reason !== null && (
          <button type="button" className="textlink" onClick={() => instead(notPrinted, step.id, text, others)}>
            {doNotPrintIt}
          </button>
        )}
      </p>
      {sentence.reason !== null && <p className="small">{authorsReason(sentence.reason)}</p>}
      {reason !== null && (
        <div className="field">
          <label htmlFor={`reason-${step.id}`}>{myReason}</label>
          <input id={`reason-${step.id}`} value={reason} onChange={(event) => setReason(event.target.value)} />
          <button
            type="button"
            className="btn mt-2 justify-self-start"
            disabled={reason.trim() === ''}
            onClick={() => {
              write(step.id, text, [...others, { sentence: sentence.text, reason: reason.trim() }])
              setReason(null)
            }}
          >
            {printItAsMine}
          </button>
        </div>
      )}
    </div>
  )
}
