import type { ShootDocument } from '@/lib/plan/shoot'
import { CutFace } from '../ui/cut-face'
import { Caution } from '../ui/field'
import { SafetyLedger } from '../ui/safety-ledger'
import { sliceHeading, whatToExpect } from '../words/plan'
import { AnotherHeat } from './another-heat'
import type { Preview } from './preview'

/** What is on the plate: the slice, what to expect of it, the same at another heat, and the safety ledger. */
export function PlanSlice({ document, preview }: { document: ShootDocument; preview: Preview }) {
  return (
    <div>
      <div className="cols-2">
        <section aria-label={sliceHeading}>
          <h2>{sliceHeading}</h2>
          <CutFace drawing={preview.cutFace} sentence={preview.slice} tones={preview.tones} />
        </section>
        <section aria-label={whatToExpect}>
          <h2>{whatToExpect}</h2>
          <ul className="mt-2 list-none p-0">
            {preview.facts.map((fact) => (
              <li key={fact} className="border-b border-rule py-2">
                {fact}
              </li>
            ))}
          </ul>
          {preview.warnings.map((warning) => (
            <Caution key={warning.code + warning.path}>{warning.sentence}</Caution>
          ))}
        </section>
      </div>
      <AnotherHeat document={document} plan={preview.cutFace} heats={preview.heats} />
      {preview.safety.map(({ title, panel }) => (
        <SafetyLedger key={title} title={title} panel={panel} />
      ))}
    </div>
  )
}
