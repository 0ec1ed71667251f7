'use client'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { withCoverage } from '@/lib/plan/new-shoot'
import type { ShootDocument } from '@/lib/plan/shoot'
import { send } from '../../ui/send'
import { PlanForm, strayProblems } from '../plan-form'
import { PlanPicture } from '../plan-picture'
import type { Preview } from '../preview'
import type { RememberedCooker } from '../remembered-field'
import { useDraft } from '../use-draft'
import { useGains } from '../use-gains'
import { usePreview } from '../use-preview'

interface Props {
  readonly template: ShootDocument
  readonly first: Preview
  readonly cookers: readonly RememberedCooker[]
}
/** A new shoot: the heat line is there from the first field on; saving keeps it and opens the day. */
export function NewShoot({ template, first, cookers }: Props) {
  const router = useRouter()
  const { document, keep, forget, restored, reset } = useDraft('emberslate-draft-new', template)
  const { preview, problems, working } = usePreview(document, first)
  const gains = useGains(document, problems.length === 0 && !working)
  const [fault, setFault] = useState('')
  const [saving, setSaving] = useState(false)
  async function save() {
    setSaving(true)
    const answer = await send<{ id: string }>('/api/shoots', 'POST', { document })
    setSaving(false)
    if (!answer.ok) return setFault(answer.problems[0]?.sentence ?? answer.sentence)
    forget()
    router.push(`/shoots/${answer.value.id}/day`)
  }
  return (
    <div className="cols-plan">
      <div className="max-[1000px]:order-2">
        {restored && (
          <p className="small">
            This is what you typed last time.{' '}
            <button type="button" className="textlink" onClick={() => reset(template)}>
              Begin anew
            </button>
          </p>
        )}
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
          notes={preview ? [...preview.warnings, ...preview.cautions] : []}
        />
        <button type="button" className="btn main mt-4" onClick={save} disabled={saving || problems.length > 0}>
          {saving ? 'Saving' : 'Save and lay out the day'}
        </button>
        <p role="alert">{fault && <span className="says">{fault}</span>}</p>
      </div>
      <PlanPicture document={document} preview={preview} working={working} />
    </div>
  )
}
