'use client'
import type { ShootDocument } from '@/lib/plan/shoot'
import { PlanForm, strayProblems } from '../../plan-form'
import { PlanPicture } from '../../plan-picture'
import type { Preview } from '../../preview'
import { SaveLine } from '../../save-line'
import { usePreview } from '../../use-preview'
import { useSaved } from '../../use-saved'

/** The plan of a saved shoot; every change is saved, and the picture follows. */
export function PlanDesk(props: { shootId: string; version: number; document: ShootDocument; first: Preview }) {
  const { document, change, problems: unsaved, state } = useSaved(props.shootId, props.version, props.document)
  const { preview, problems, working } = usePreview(document, props.first)
  const shown = problems.length > 0 ? problems : unsaved
  return (
    <div className="cols-plan">
      <div className="max-[1000px]:order-2">
        <SaveLine state={state} problems={strayProblems(document, shown)} />
        <PlanForm document={document} onChange={change} problems={shown} warnings={preview?.warnings ?? []} />
      </div>
      <PlanPicture preview={preview} working={working} />
    </div>
  )
}
