'use client'
import { shotsOf } from '@/lib/plan/edit'
import { withoutAbsentMoments } from '@/lib/plan/new-shoot'
import type { ShootDocument } from '@/lib/plan/shoot'
import { UndoLine } from '../../../ui/undo-line'
import { shotsWent, undo } from '../../../words/shared'
import { AnswerLine } from '../../answer-line'
import { PlanForm, strayProblems } from '../../plan-form'
import { PlanPicture } from '../../plan-picture'
import { PlanSlice } from '../../plan-slice'
import type { Preview } from '../../preview'
import type { RememberedCooker } from '../../remembered-field'
import { SaveLine } from '../../save-line'
import { useActions } from '../../use-actions'
import { useGains } from '../../use-gains'
import { usePreview } from '../../use-preview'
import { useSaved } from '../../use-saved'

interface Props {
  shootId: string
  version: number
  document: ShootDocument
  first: Preview
  cookers: readonly RememberedCooker[]
}
/** The plan of a saved shoot; every change is saved, and the picture follows. */
export function PlanDesk(props: Props) {
  const saved = useSaved(props.shootId, props.version, props.document)
  const { document, change, problems: unsaved } = saved
  const { preview, problems, working } = usePreview(document, props.first)
  const gains = useGains(document, problems.length === 0 && !working)
  const taken = useActions(document, change)
  // What is saved was found right: the picture, which takes longer, may still tell of what stood there before.
  const shown = saved.state === 'saved' || problems.length === 0 ? unsaved : problems
  function take(next: ShootDocument) {
    const kept = withoutAbsentMoments(next)
    const gone = shotsOf(next).length - shotsOf(kept).length
    if (gone > 0) taken.act(shotsWent(gone), kept)
    else change(kept)
  }
  return (
    <div className="cols-plan items-start">
      <div className="max-[1000px]:order-2 min-[1001px]:row-span-2">
        <AnswerLine preview={preview} />
        <SaveLine saved={saved} problems={strayProblems(document, shown)} />
        <UndoLine said={taken.last?.words ?? null} undo={taken.undo} word={undo} />
        <PlanForm
          document={document}
          onChange={take}
          problems={shown}
          gains={gains}
          cookers={props.cookers}
          units={props.first.units}
          notes={preview ? [...preview.warnings, ...preview.cautions] : []}
        />
      </div>
      <PlanPicture preview={preview} working={working} />
      {preview && (
        <div className="max-[1000px]:order-3">
          <PlanSlice document={document} preview={preview} />
        </div>
      )}
    </div>
  )
}
