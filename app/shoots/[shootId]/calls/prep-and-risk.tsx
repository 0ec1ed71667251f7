import type { PrepList } from '@/lib/export/prep-list'
import type { RiskSheet } from '@/lib/export/risk-sheet'
import { MadeFiles } from '../../../ui/made-files'
import {
  fuelWords,
  inUsLetter,
  kitIsOnPaper,
  kitWords,
  prepList,
  riskSheet,
  shoppingWords,
  thermometersWords,
} from '../../../words/calls'
import { printing } from '../../../words/working'

const Papers = ({ id, file, name }: { id: string; file: string; name: string }) => (
  <MadeFiles what={printing(name)}>
    <p className="mt-2 flex flex-wrap gap-4">
      <a className="btn" href={`/shoots/${id}/${file}.pdf?paper=A4`}>
        {name}, A4
      </a>
      <a className="btn" href={`/shoots/${id}/${file}.pdf?paper=Letter`}>
        {inUsLetter(name)}
      </a>
    </p>
  </MadeFiles>
)

/** The prep list folded under the calls; on paper it is ticked by hand. */
export function PrepOnPage({ id, list }: { id: string; list: PrepList }) {
  const groups = [
    [fuelWords, list.fuel],
    [thermometersWords, list.thermometers],
    [kitWords, list.kit],
  ] as const
  return (
    <details className="mt-4">
      <summary>{prepList}</summary>
      <Papers id={id} file="prep-list" name="Prep list" />
      <dl className="mt-4 max-w-3xl">
        {list.ahead.map(({ when, what }) => (
          <div key={what} className="border-b border-rule py-2">
            <dt className="font-semibold">{when}</dt>
            <dd>{what}</dd>
          </div>
        ))}
      </dl>
      <h3 className="mt-4">{shoppingWords}</h3>
      <ul className="max-w-3xl">
        {list.shopping.map(({ what, much }, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: an ingredient may stand there twice
          <li key={i}>
            {what} {much}
          </li>
        ))}
      </ul>
      {groups.map(
        ([title, lines]) =>
          lines.length > 0 && (
            <div key={title}>
              <h3 className="mt-4">{title}</h3>
              <ul className="max-w-3xl">
                {lines.map((words) => (
                  <li key={words}>{words}</li>
                ))}
              </ul>
            </div>
          ),
      )}
      <p className="small mt-2">{kitIsOnPaper}</p>
    </details>
  )
}

export function RiskOnPage({ id, sheet }: { id: string; sheet: RiskSheet }) {
  return (
    <details className="mt-4">
      <summary>{riskSheet}</summary>
      <Papers id={id} file="risk-sheet" name="Risk sheet" />
      {sheet.groups.map(({ title, lines }) => (
        <div key={title} className="mt-4 max-w-3xl">
          <h3>{title}</h3>
          <dl>
            {lines.map(({ hazard, does, who }) => (
              <div key={hazard} className="border-b border-rule py-2">
                <dt className="font-semibold">
                  {hazard} {who && <span className="small font-normal">{who}</span>}
                </dt>
                <dd>{does}</dd>
              </div>
            ))}
          </dl>
        </div>
      ))}
      <p className="small mt-2 max-w-3xl">{sheet.defers}</p>
    </details>
  )
}
