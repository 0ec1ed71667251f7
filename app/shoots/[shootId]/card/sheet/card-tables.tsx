import type { SizeCell, SizeTable } from '@/lib/card/sizes'
import type { CardModel } from '@/lib/export/card'
import { tied } from '@/lib/export/tied'
import {
  authoritySays,
  byItsTemperature,
  howDone,
  howYouKnow,
  middleWords,
  offHeatAt,
  perServingEstimate,
  roughlyWords,
  stageWords,
  thickestPart,
  whenSliced,
  yoursIsAnotherSize,
} from '../../../../words/card'

/** Below a hand's width a row becomes a block, each figure with its column's name. */
const named = (label: string) => ({ 'data-label': label })

export function Doneness({ model }: { model: CardModel }) {
  if (model.doneness.length === 0) return null
  return (
    <section aria-labelledby="card-doneness">
      <h2 id="card-doneness">{howDone}</h2>
      <table className="card-table" aria-labelledby="card-doneness">
        <thead>
          <tr>
            <th scope="col">{whenSliced}</th>
            <th scope="col">{middleWords}</th>
            <th scope="col">{offHeatAt}</th>
            <th scope="col">{authoritySays}</th>
          </tr>
        </thead>
        <tbody>
          {model.doneness.map((row) => (
            <tr key={row.word} className={row.here ? 'here' : undefined}>
              <th scope="row">{row.word}</th>
              <td {...named('middle')}>{tied(row.middle)}</td>
              <td {...named('off the heat at')}>{tied(row.offHeat)}</td>
              <td {...named('the authority says')}>{row.authority}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

export function HowToKnow({ model }: { model: CardModel }) {
  return (
    <section aria-labelledby="card-know">
      <h2 id="card-know">{howYouKnow}</h2>
      <table className="card-table" aria-labelledby="card-know">
        <thead>
          <tr>
            <th scope="col">{stageWords}</th>
            <th scope="col">{byItsTemperature}</th>
            <th scope="col">{roughlyWords}</th>
          </tr>
        </thead>
        <tbody>
          {model.howToKnow.map((row) => (
            <tr key={row.id}>
              <th scope="row">{row.stage}</th>
              <td {...named('')}>{tied(row.know)}</td>
              <td {...named('roughly')}>{tied(row.roughly)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

export function Sizes({ table }: { table: SizeTable }) {
  return (
    <section aria-labelledby="card-sizes">
      <h2 id="card-sizes">{yoursIsAnotherSize}</h2>
      <table className="card-table card-sizes">
        <caption>{tied(table.caption)}</caption>
        <thead>
          <tr>
            <th scope="col">{thickestPart}</th>
            {table.columns.map(({ kind, words }) => (
              <th key={kind} scope="col">
                {words}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.rows.map((row) => (
            <tr key={row.thick} className={row.filmed ? 'here' : undefined}>
              <th scope="row">
                {tied(row.thick)}
                <span className="weight"> {tied(row.weight)}</span>
              </th>
              {row.cells.map((cell, i) => (
                <td key={table.columns[i]?.kind} {...named(table.columns[i]?.words ?? '')}>
                  <Cell cell={cell} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p className="small mt-1">{table.note}</p>
    </section>
  )
}
const Cell = ({ cell }: { cell: SizeCell }) => (
  <>
    {tied(cell.words)}
    {cell.filmed && cell.likely && <span className="weight"> {tied(`likely ${cell.likely}, as filmed`)}</span>}
  </>
)

export function Nutrition({ model }: { model: CardModel }) {
  const { rows, note } = model.recipe.nutrition
  if (rows.length + note.length === 0) return null
  return (
    <section aria-labelledby="card-nutrition">
      <h2 id="card-nutrition">{perServingEstimate}</h2>
      {rows.length > 0 && (
        <dl className="card-nutrition">
          {rows.map(({ name, amount, unit }) => (
            <div key={name} className={name.startsWith('of which') ? 'part' : undefined}>
              <dt>{name}</dt>
              <dd>{tied(`${amount} ${unit}`)}</dd>
            </div>
          ))}
        </dl>
      )}
      {note.map((sentence) => (
        <p key={sentence} className="small mt-1">
          {sentence}
        </p>
      ))}
    </section>
  )
}
