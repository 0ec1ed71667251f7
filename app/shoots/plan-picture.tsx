import { HeatLineFigure } from '../ui/heat-line-figure'
import type { Preview } from './preview'

/** The heat line and its two sentences; dimmed words tell while it is worked out anew. */
export function PlanPicture({ preview, working }: { preview: Preview | null; working: boolean }) {
  if (!preview)
    return (
      <p className="lead" role="status">
        {working ? 'Working out 256 cooks.' : 'The heat line appears as soon as the fields on the left can be read.'}
      </p>
    )
  return (
    <div data-kernel={preview.kernel}>
      <h1>
        {preview.first}
        <br />
        {preview.second}
      </h1>
      <p className="small min-h-6" role="status">
        {working ? 'Working out 256 cooks.' : ''}
      </p>
      {preview.conflicts.map((sentence) => (
        <p key={sentence} className="conflict">
          {sentence}
        </p>
      ))}
      <HeatLineFigure pictures={preview.heatLine} />
    </div>
  )
}
