import type { ShootDocument } from '@/lib/plan/shoot'
import { CutFace } from '../ui/cut-face'
import { DrawingSvg, Figures } from '../ui/drawing'
import { Caution } from '../ui/field'
import { SafetyLedger } from '../ui/safety-ledger'
import { AnotherHeat } from './another-heat'
import type { Preview } from './preview'

/** The heat line, the slice and what the forecast says in words; dimmed words tell while it is worked out anew. */
export function PlanPicture(props: { document: ShootDocument; preview: Preview | null; working: boolean }) {
  const { document, preview, working } = props
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
      <figure className="hidden min-[1001px]:block">
        <DrawingSvg drawing={preview.lying} />
      </figure>
      <figure className="hidden min-[700px]:max-[1000px]:block">
        <DrawingSvg drawing={preview.narrow} />
      </figure>
      <figure className="min-[700px]:hidden">
        <DrawingSvg drawing={preview.standing} />
      </figure>
      <Figures drawing={preview.lying} />
      <div className="cols-2">
        <section aria-label="The slice">
          <h2>The slice</h2>
          <CutFace drawing={preview.cutFace} sentence={preview.slice} tones={preview.tones} />
        </section>
        <section aria-label="What to expect">
          <h2>What to expect</h2>
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
