import { cutFaceSentence, drawCutFace, tonesOf } from '@/lib/export/cut-face'
import type { Forecast } from '@/lib/model/forecast'
import type { UnitSystem } from '@/lib/units'
import { DrawingSvg, Figures, paint } from './drawing'

/** The predicted slice with what its tones mean. */
export function CutFace({ forecast, units }: { forecast: Forecast; units: UnitSystem }) {
  const drawing = drawCutFace(forecast, units)
  return (
    <figure className="m-0">
      <DrawingSvg drawing={drawing} />
      <figcaption className="mt-2">{cutFaceSentence(forecast, units)}</figcaption>
      <Tones cut={forecast.cook.roast.cut} units={units} />
      <Figures drawing={drawing} />
    </figure>
  )
}

function Tones({ cut, units }: { cut: string; units: UnitSystem }) {
  return (
    <ul className="mt-4 flex list-none flex-wrap p-0">
      {tonesOf(cut, units).map((tone) => (
        <li key={tone.role} className="min-w-24 flex-1">
          <div className="h-5 border border-ink" style={{ background: paint(tone.role) }} />
          <p className="small pt-1 leading-tight">
            <b className="text-ink">{tone.range}</b>
            <br />
            {tone.words}
          </p>
        </li>
      ))}
    </ul>
  )
}
