'use client'
import { useRouter } from 'next/navigation'
import { useRef, useState } from 'react'
import { cutById } from '@/lib/model/cuts'
import { setAt, shotsOf, valueAt } from '@/lib/plan/edit'
import { withCoverage } from '@/lib/plan/new-shoot'
import type { ShootDocument } from '@/lib/plan/shoot'
import { send } from '../../ui/send'
import { UndoLine } from '../../ui/undo-line'
import * as words from '../../words/start'
import { AnswerLine } from '../answer-line'
import { PlanForm, strayProblems } from '../plan-form'
import { PlanPicture } from '../plan-picture'
import { PlanSlice } from '../plan-slice'
import type { Preview } from '../preview'
import type { RememberedCooker } from '../remembered-field'
import { useDraft } from '../use-draft'
import { useGains } from '../use-gains'
import { usePreview } from '../use-preview'
import { type OfferedSample, StartFrom } from './start-from'

interface Props {
  readonly template: ShootDocument
  /** The sample that the page was opened with. */
  readonly from: string | null
  readonly first: Preview
  readonly samples: readonly OfferedSample[]
  readonly cookers: readonly RememberedCooker[]
}
/** A new shoot: the heat line is there from the first field on; saving keeps it and opens the day. */
export function NewShoot({ template, from, first, samples, cookers }: Props) {
  const router = useRouter()
  const draft = useDraft(from ? `emberslate-draft-new/${from}` : 'emberslate-draft-new', template)
  const { document, keep } = draft
  const { preview, problems, working } = usePreview(document, first)
  const gains = useGains(document, problems.length === 0 && !working)
  const [before, setBefore] = useState<{ readonly document: ShootDocument; readonly said: string } | null>(null)
  const [fault, setFault] = useState('')
  const [saving, setSaving] = useState(false)
  async function save() {
    setSaving(true)
    const answer = await send<{ id: string }>('/api/shoots', 'POST', { document: named(document) })
    setSaving(false)
    if (!answer.ok) return setFault(answer.problems[0]?.sentence ?? answer.sentence)
    draft.forget()
    router.push(`/shoots/${answer.value.id}/day`)
  }
  /** What was typed while the samples were fetched counts too. */
  const latest = useRef(document)
  latest.current = document
  async function fill({ id, title }: OfferedSample) {
    const { sampleFor } = await import('@/lib/plan/samples')
    setBefore({ document: latest.current, said: words.startsFrom(title) })
    keep(sampleFor(id, latest.current))
  }
  const beginAnew = () => {
    setBefore({ document, said: words.begunAnew })
    draft.reset(template)
  }
  /** What was typed since is put by in its turn. */
  const putBack = () => {
    if (!before) return
    setBefore({ document, said: words.isBack })
    keep(before.document)
  }
  return (
    <div className="cols-plan items-start">
      <div className="min-[1001px]:row-span-2">
        <p className="lead">{words.sixQuestions}</p>
        <StartFrom samples={samples} fill={fill} />
        <UndoLine said={before?.said ?? null} undo={putBack} word={words.putBackTyped} />
        {draft.restored && !before && (
          <p className="small">
            {words.typedLastTime}{' '}
            <button type="button" className="textlink" onClick={beginAnew}>
              {words.beginAnew}
            </button>
          </p>
        )}
        <AnswerLine preview={preview} />
        {strayProblems(document, problems).map((problem) => (
          <p className="says" key={problem.pointer + problem.sentence} role="alert">
            {problem.sentence}
          </p>
        ))}
        <PlanForm
          document={document}
          onChange={(next) => keep(withCoverage(next))}
          problems={problems}
          gains={gains}
          cookers={cookers}
          units={first.units}
          notes={preview ? [...preview.warnings, ...preview.cautions] : []}
        >
          <button type="button" className="btn main mt-4" onClick={save} disabled={saving || problems.length > 0}>
            {saving ? words.saving : words.save}
          </button>
          <p role="alert">{fault && <span className="says">{fault}</span>}</p>
          <p className="small mt-2">{words.saveNext(shotsOf(document).length)}</p>
          <h2 className="mt-10">{words.later}</h2>
          <p className="small mt-2">{words.laterWhy}</p>
        </PlanForm>
      </div>
      <PlanPicture preview={preview} working={working} />
      {preview && <PlanSlice document={document} preview={preview} />}
    </div>
  )
}

/** A day that nobody has named bears the name of its cut. */
function named(document: ShootDocument): ShootDocument {
  const name = cutById(String(valueAt(document, '/cooks/0/roast/cut')))?.name
  if (document.title !== words.newShoot || !name) return document
  return setAt(document, '/title', name.charAt(0).toUpperCase() + name.slice(1))
}
