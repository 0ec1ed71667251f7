import type { SafetyPanel } from '@/lib/export/safety-panel'
import type { SafetyLine } from '@/lib/export/safety-times'
import { asksWords, conditionsAndSources, howToTakeReading, ruleWords, soItIs, thisPlanGives } from '../words/shared'
import { Folded } from './folded'
import { Sideways } from './sideways'
import { WithTerms } from './with-terms'

/** Each printed rule in one line: what it asks, what this plan gives, what may be said; conditions and sources folded away. */
export function SafetyLedger({ panel, title }: { panel: SafetyPanel; title: string }) {
  return (
    <section aria-label={title} className="mt-8">
      <h2>{title}</h2>
      <p className="mt-2 max-w-[66ch]">
        <WithTerms
          text={panel.lead}
          of={{ 'food-safety authority': 'food-safety authority', ensemble: 'likely cook' }}
        />
      </p>
      {panel.whose && <p className="mt-2 max-w-[66ch]">{panel.whose}</p>}
      <Sideways of={title}>
        <table className="mt-4 min-w-[640px]">
          <thead>
            <tr>
              <th scope="col">{ruleWords}</th>
              <th scope="col">{asksWords}</th>
              <th scope="col">{thisPlanGives}</th>
              <th scope="col">{soItIs}</th>
            </tr>
          </thead>
          <tbody>
            {panel.lines.map((line) => (
              <tr key={line.id}>
                <td>
                  <WithTerms text={line.rule} of={{ 'log reduction': 'log' }} />
                </td>
                <td>{line.asks}</td>
                <td>{line.gives}</td>
                <td>
                  <b>{line.verdict}</b>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Sideways>
      {panel.leftovers && <p className="mt-4 max-w-[66ch]">{panel.leftovers}</p>}
      <Folded summary={conditionsAndSources} fault={false}>
        <dl className="max-w-[66ch]">
          {panel.lines.map((line) => (
            <Conditions key={line.id} line={line} />
          ))}
        </dl>
      </Folded>
      <Folded summary={howToTakeReading} fault={false}>
        <ol className="max-w-[66ch] pl-6">
          {panel.probing.map((step) => (
            <li key={step} className="py-1">
              {step}
            </li>
          ))}
        </ol>
      </Folded>
    </section>
  )
}

function Conditions({ line }: { line: SafetyLine }) {
  return (
    <>
      <dt className="mt-2 font-semibold">{line.rule}</dt>
      {line.details.map((detail) => (
        <dd key={detail} className="ml-0">
          {detail}
        </dd>
      ))}
      <dd className="small ml-0">{line.source}</dd>
    </>
  )
}
