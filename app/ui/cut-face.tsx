import type { Tone } from '@/lib/export/cut-face'
import type { Drawing } from '@/lib/export/drawing'
import { howToReadFace } from '../words/shared'
import { DrawingSvg, Figures, paint } from './drawing'

/** The predicted slice, what it says in one sentence, and what its tones mean. */
export function CutFace(props: { drawing: Drawing; sentence: string; tones: readonly Tone[] }) {
  return (
    <figure className="m-0">
      <DrawingSvg drawing={props.drawing} />
      <figcaption className="mt-2">{props.sentence}</figcaption>
      <Tones tones={props.tones} />
      <p className="small mt-2">{howToReadFace}</p>
      <Figures tables={props.drawing.tables} />
    </figure>
  )
}

function Tones({ tones }: { tones: readonly Tone[] }) {
  return (
    <ul className="mt-4 flex list-none flex-wrap p-0">
      {tones.map((tone) => (
        <li key={tone.words} className="min-w-16 flex-1 pb-2">
          <div className="flex h-5 border border-ink">
            {tone.shades.map((shade) => (
              <span key={shade} className="tone flex-1" style={{ background: paint(shade) }} />
            ))}
          </div>
          <p className="small pt-1 pr-2 leading-tight">
            <b className="text-ink">{tone.range}</b>
            <br />
            {tone.words}
          </p>
        </li>
      ))}
    </ul>
  )
}
