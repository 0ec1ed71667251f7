import { HeatLineFigure } from '../ui/heat-line-figure'
import { Working } from '../ui/working'
import { awaitsFields, forecasting, lastsHere } from '../words/working'
import type { Preview } from './preview'

/** The heat line and its two sentences; dimmed words tell while it is worked out anew. */
export function PlanPicture({ preview, working }: { preview: Preview | null; working: boolean }) {
  if (!preview)
    return (
      <div>
        <Working what={working ? forecasting : null} lasts={lastsHere} />
        {!working && <p className="lead">{awaitsFields}</p>}
      </div>
    )
  return (
    <div data-kernel={preview.kernel}>
      <h1>
        {preview.first}
        <br />
        {preview.second}
      </h1>
      <Working what={working ? forecasting : null} lasts={lastsHere} />
      {preview.conflicts.map((sentence) => (
        <p key={sentence} className="conflict">
          {sentence}
        </p>
      ))}
      <HeatLineFigure pictures={preview.heatLine} />
    </div>
  )
}
