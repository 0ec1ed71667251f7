'use client'
import { startFrom } from '../../words/start'

export interface OfferedSample {
  readonly id: string
  readonly title: string
  readonly says: string
}

/** Cooks to start from. What stood in the form can be put back. */
export function StartFrom({
  samples,
  fill,
}: {
  samples: readonly OfferedSample[]
  fill: (sample: OfferedSample) => void
}) {
  return (
    <details className="mt-2">
      <summary>{startFrom}</summary>
      <ul className="list-none p-0">
        {samples.map((sample) => (
          <li key={sample.id} className="border-b border-rule py-2">
            <button type="button" className="textlink min-h-11 text-left" onClick={() => fill(sample)}>
              {sample.title}
            </button>
            <span className="small block">{sample.says}</span>
          </li>
        ))}
      </ul>
    </details>
  )
}
