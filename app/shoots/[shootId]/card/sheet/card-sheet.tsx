import type { ReactNode } from 'react'
import type { CardLine, CardModel } from '@/lib/export/card'
import { stepAnchor } from '@/lib/export/recipe-json-ld'
import { DrawingSvg } from '../../../../ui/drawing'
import { Caution } from '../../../../ui/field'
import { PageCode } from '../../../../ui/page-code'
import './card-sheet.css'
import { afterwards, by, howLongItTakes, stepsWords, youNeed, yourRoastIsAnotherSize } from '../../../../words/card'
import { Doneness, HowToKnow, Nutrition } from './card-tables'

/** The recipe card as readers read it and print it; the same values as the PDF. `sizes`: times for other sizes. */
export function CardSheet({ model, sizes }: { model: CardModel; sizes: ReactNode }) {
  return (
    <article className="card" lang="en">
      <header className="card-head">
        <div>
          <h1>{model.title}</h1>
          {model.published.author !== undefined && <p className="mt-2">{by(model.published.author)}</p>}
          {model.intro && <p className="mt-3">{model.intro}</p>}
          <p className="no-print mt-2">
            <a className="textlink inline-block py-2.5" href="#own-roast">
              {yourRoastIsAnotherSize}
            </a>
          </p>
        </div>
        <DrawingSvg drawing={model.face} />
      </header>
      <TimeLine model={model} />
      <div className="card-main">
        <Needs model={model} />
        <section aria-labelledby="card-steps">
          <h2 id="card-steps" className="sr-only">
            {stepsWords}
          </h2>
          <ol className="m-0 list-none p-0">
            {model.steps.map((line) => (
              <Step key={line.no} line={line} />
            ))}
          </ol>
          {model.cautions.map((sentence) => (
            <Caution key={sentence}>{sentence}</Caution>
          ))}
        </section>
      </div>
      <div className="card-tables">
        <div className="wide">{sizes}</div>
        <div className="wide">
          <HowToKnow model={model} />
        </div>
        <div className="stack">
          <Doneness model={model} />
          <Nutrition model={model} />
        </div>
        <div className="stack">
          <Keeping model={model} />
          {model.published.at !== null && <PageCode at={model.published.at} leadsTo="this card" />}
        </div>
      </div>
      <footer className="card-foot">
        <span className="max-w-[60ch]">{model.foot}</span>
        <span>{model.stamp}</span>
      </footer>
    </article>
  )
}

function TimeLine({ model }: { model: CardModel }) {
  const total = model.timeLine.reduce((sum, part) => sum + part.likely, 0)
  return (
    <dl className="card-line" aria-label={howLongItTakes}>
      {model.timeLine.map((part) => (
        <div key={part.id} style={{ flexGrow: Math.round((100 * part.likely) / total) }}>
          <dt>{part.label}</dt>
          <dd>{part.words}</dd>
        </div>
      ))}
    </dl>
  )
}

function Needs({ model }: { model: CardModel }) {
  return (
    <section aria-labelledby="card-needs">
      <h2 id="card-needs">{youNeed}</h2>
      <table className="mt-1" aria-labelledby="card-needs">
        <tbody>
          {model.ingredients.map(({ what, much, other }) => (
            <tr key={what}>
              <th scope="row">{what}</th>
              <td className="text-right">
                <b>{much.replace(/(\d) (?=\S+$)/, '$1\u00a0')}</b>
                {other && <span className="small block">{other}</span>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {model.notes.map((note) => (
        <p key={note} className="small mt-2">
          {note}
        </p>
      ))}
    </section>
  )
}

function Step({ line }: { line: CardLine }) {
  return (
    <li id={stepAnchor(line.no)} className={`card-step ${line.own ? 'italic' : ''}`}>
      <span className="font-semibold">{line.no}</span>
      <span>
        {line.runs.map((run, i) =>
          // biome-ignore lint/suspicious/noArrayIndexKey: runs are drawn in order and never reordered
          run.strong ? <b key={i}>{run.text}</b> : <span key={i}>{run.text}</span>,
        )}
      </span>
    </li>
  )
}

/** What comes after the meal, where nobody looks with tongs in hand. */
function Keeping({ model }: { model: CardModel }) {
  const { storage } = model.recipe
  if (storage.length + model.housekeeping.length === 0) return null
  return (
    <section aria-labelledby="card-keeping">
      <h2 id="card-keeping">{afterwards}</h2>
      {storage.map((sentence) => (
        <p key={sentence} className="small mt-1">
          {sentence}
        </p>
      ))}
      {model.housekeeping.map((sentence) => (
        <Caution key={sentence}>{sentence}</Caution>
      ))}
    </section>
  )
}
