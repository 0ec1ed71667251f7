'use client'
import { useCallback, useMemo, useRef, useState } from 'react'
import { allAsRead } from '@/lib/plan/as-read'
import { addShot, shotsOf } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import { listAt } from '@/lib/plan/sketch'
import type { Problem } from '@/lib/refusals'
import type { UnitSystem } from '@/lib/units'
import { Field } from '../../../ui/field'
import type { HeatPictures } from '../../../ui/heat-line-shapes'
import { useReadersWay } from '../../../ui/reader'
import { newWriteId } from '../../../ui/send'
import { UndoLine } from '../../../ui/undo-line'
import { WithTerms } from '../../../ui/with-terms'
import {
  addShotWords,
  dayWithThisChange,
  firstLookAtDay,
  howToPin,
  shotIsAdded,
  shotsWords,
  tryingOut,
} from '../../../words/day'
import { putBack, undo as undoWord } from '../../../words/shared'
import { dayFields } from '../../day-fields'
import { type DocumentField, fieldAt } from '../../document-fields'
import { SaveLine } from '../../save-line'
import { type Act, useActions } from '../../use-actions'
import { useSaved } from '../../use-saved'
import { BackwardCurve } from './backward-curve'
import type { CurveView } from './curve-view'
import { DayPicture } from './day-picture'
import type { DayView } from './day-view'
import { DoesNotFit, Holds } from './does-not-fit'
import { RestOfDay } from './rest-of-day'
import { shotCells } from './shot-cells'
import { crewFields, freshShot, shotFields } from './shot-fields'
import { ShotTable } from './shot-table'
import { sideFields } from './side-fields'
import { taskCells } from './task-fields'
import { useTitleOfNew } from './use-title-of-new'
import { type Trial, useTrial } from './use-trial'

interface DayDeskProps {
  readonly heatLine: HeatPictures | null
  readonly shootId: string
  readonly version: number
  readonly document: ShootDocument
  /** The saved day as the server laid it out; null where it cannot be. */
  readonly view: DayView | null
  /** How early the meat must go on; null where no slice is wished. */
  readonly curve: CurveView | null
  readonly units: UnitSystem
}

/** The day edited where it stands: tried out in this browser as it is typed, saved, and laid out by the server. */
export function DayDesk({ shootId, version, document: written, view: laid, curve, units, ...drawn }: DayDeskProps) {
  const saved = useSaved(shootId, version, written)
  const { document, change } = saved
  const { act, last, undo } = useActions(document, change)
  const [open, setOpen] = useState<string | null>(null)
  const goToTitle = useTitleOfNew()
  /** While a handle is held: what would be if it were let go here. */
  const [held, setHeld] = useState<ShootDocument | null>(null)
  const differs = useMemo(() => JSON.stringify(document) !== JSON.stringify(written), [document, written])
  const { trial, warm } = useTrial(shootId, held ?? (differs ? document : null), units, held !== null)
  const way = useReadersWay()
  const shown = trial?.view ?? laid
  const view = useMemo(() => allAsRead(shown, way), [shown, way])
  /** The axis stands still under a handle that is held. */
  const axis = useRef(view?.axis ?? null)
  if (!held) axis.current = view?.axis ?? null
  const problems = trial && trial.document === document && trial.problems.length > 0 ? trial.problems : saved.problems
  const actAndOpen: Act = useCallback(
    (words, next, at) => {
      setHeld(null)
      act(words, next, at)
    },
    [act],
  )
  const cameras = listAt<{ id: string }>(document, '/cameras').map(({ id }) => id)
  const control = (field: DocumentField) => (
    <DayField key={field.key} field={field} document={document} problems={problems} change={change} />
  )
  const strays = straysOf(document, problems, open, cameras)
  const addOne = () => {
    const id = `shot-${newWriteId().slice(-6).toLowerCase()}`
    actAndOpen(shotIsAdded, addShot(document, freshShot(id)))
    setOpen(id)
    goToTitle(id)
  }
  return (
    <>
      <DayPicture
        pictures={drawn.heatLine}
        drawn={laid}
        view={view}
        document={document}
        act={actAndOpen}
        attempt={setHeld}
        warm={warm}
      />
      {view && (
        <div className="cols-fit">
          <DoesNotFit view={view} document={document} act={actAndOpen} />
          <Holds view={view} />
        </div>
      )}
      <section aria-label={shotsWords} className="mt-8" onFocus={warm} onPointerEnter={warm}>
        <div className="cols-head">
          <h2>{shotsWords}</h2>
          <button type="button" className="btn" onClick={addOne}>
            {addShotWords}
          </button>
        </div>
        <div className="told">
          <SaveLine saved={saved} problems={strays} />
          <TrialLine trial={trial} />
          <UndoLine said={last?.words ?? null} undo={undo} word={last?.at ? putBack : undoWord} />
        </div>
        <ShotTable
          document={document}
          view={view}
          axis={axis.current}
          problems={problems}
          cameras={cameras}
          open={open}
          onOpen={setOpen}
          control={control}
          change={change}
          act={actAndOpen}
          attempt={setHeld}
        />
        {shotsOf(document).length > 0 && <HowToPinLine />}
        <RestOfDay
          document={document}
          view={view}
          problems={problems}
          control={control}
          change={change}
          act={actAndOpen}
        />
      </section>
      {curve && <BackwardCurve curve={allAsRead(curve, way)} document={document} act={actAndOpen} />}
    </>
  )
}

interface DayFieldProps {
  readonly field: DocumentField
  readonly document: ShootDocument
  readonly problems: readonly Problem[]
  readonly change: (next: ShootDocument) => void
}
const DayField = ({ field, document, problems, change }: DayFieldProps) => (
  <Field
    label={field.label}
    why={field.why}
    options={field.options}
    suggestions={field.suggestions}
    value={field.read(document)}
    fault={problems.find((problem) => fieldAt([field], problem.pointer))?.sentence}
    onChange={(text) => change(field.write(document, text))}
  />
)

const HowToPinLine = () => (
  <p className="small mt-2">
    <WithTerms text={howToPin} of={{ moment: 'happens once', pinned: 'pin' }} />
  </p>
)

/** Faults that no field on the screen shows, each with the name of its shot, task or side. */
function straysOf(
  document: ShootDocument,
  problems: readonly Problem[],
  open: string | null,
  cameras: readonly string[],
) {
  const shots = shotsOf(document)
  const fieldsAt = (list: string | undefined, index: number): readonly DocumentField[] => {
    // What a task says under "More" may be folded away.
    if (list === 'tasks') return Object.values(taskCells(document, index))
    if (list === 'sides') return sideFields(document, index)
    if (list !== 'shots') return [...crewFields(document), ...dayFields(document)]
    const { title, ...cells } = shotCells(document, index)
    const below = shots[index]?.id === open ? shotFields(document, index, cameras) : []
    return [title, ...Object.values(cells).flatMap((cell) => cell ?? []), ...below]
  }
  return problems.flatMap((problem) => {
    const [, list, index] = /^\/(shots|tasks|sides)\/(\d+)/.exec(problem.pointer) ?? []
    if (fieldAt(fieldsAt(list, Number(index)), problem.pointer)) return []
    const title = list && listAt<{ title?: unknown }>(document, `/${list}`)[Number(index)]?.title
    return [title ? { ...problem, sentence: `${title}: ${problem.sentence}` } : problem]
  })
}

/** Said while the day on the screen is this browser's own. */
function TrialLine({ trial }: { trial: Trial | null }) {
  if (!trial?.view || trial.problems.length > 0) return null
  return (
    <p className="small trying" role="status" data-took-ms={Math.round(trial.tookMs)} data-rough={trial.rough}>
      <b>{tryingOut}</b> {trial.rough ? firstLookAtDay : dayWithThisChange}
    </p>
  )
}
