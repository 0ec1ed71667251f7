import type { Metadata } from 'next'
import Link from 'next/link'
import type { CardLine, CardModel } from '@/lib/export/card'
import { DrawingSvg } from '../../../../ui/drawing'
import { Caution } from '../../../../ui/field'
import { openShoot } from '../../../../workbench'
import { cardModelOf } from '../../../card-model'

export const metadata: Metadata = { title: 'The card' }
export const dynamic = 'force-dynamic'

/** The recipe card to read and to print from the browser; the same values as the PDF. */
export default async function CardSheetPage({ params }: { params: Promise<{ shootId: string }> }) {
  const { shootId } = await params
  const { shoot } = await openShoot(shootId)
  const model = cardModelOf(shoot)
  return (
    <main id="main" className="page max-w-4xl!">
      <p className="no-print small mb-4 flex flex-wrap gap-4">
        <Link href={`/shoots/${shootId}/card`}>Back to the sentences</Link>
        <a href={`/shoots/${shootId}/card.pdf?paper=A4`}>PDF, A4</a>
        <a href={`/shoots/${shootId}/card.pdf?paper=Letter`}>PDF, US Letter</a>
      </p>
      <CardSheet model={model} />
    </main>
  )
}

function CardSheet({ model }: { model: CardModel }) {
  return (
    <article>
      <div className="grid grid-cols-1 items-end gap-6 border-b-2 border-ink pb-4 sm:grid-cols-[1fr_250px]">
        <div>
          <h1 className="text-5xl! leading-none!">{model.title}</h1>
          <p className="mt-3">{model.intro}</p>
        </div>
        <DrawingSvg drawing={model.face} />
      </div>
      <TimeLine model={model} />
      <div className="mt-4 grid grid-cols-1 gap-8 sm:grid-cols-[230px_1fr]">
        <Needs model={model} />
        <div>
          <ol className="m-0 list-none p-0">
            {model.steps.map((line) => (
              <Step key={line.no} line={line} />
            ))}
          </ol>
          <Doneness model={model} />
          {model.cautions.map((sentence) => (
            <Caution key={sentence}>{sentence}</Caution>
          ))}
        </div>
      </div>
      <p className="small mt-6 flex flex-wrap justify-between gap-4 border-t border-ink pt-2">
        <span className="max-w-[60ch]">{model.foot}</span>
        <span>{model.stamp}</span>
      </p>
    </article>
  )
}

function TimeLine({ model }: { model: CardModel }) {
  const total = model.timeLine.reduce((sum, part) => sum + part.likely, 0)
  const share = (part: CardModel['timeLine'][number]) => `minmax(70px, ${Math.round((100 * part.likely) / total)}fr)`
  return (
    <dl
      className="grid border-b border-ink py-2 text-sm"
      style={{ gridTemplateColumns: model.timeLine.map(share).join(' ') }}
    >
      {model.timeLine.map((part) => (
        <div key={part.id} className="border-l border-ink pl-1">
          <dt className="font-cond font-bold">{part.label}</dt>
          <dd className="m-0 border-t-2 border-ink font-cond">{part.words}</dd>
        </div>
      ))}
    </dl>
  )
}

function Needs({ model }: { model: CardModel }) {
  return (
    <section aria-label="You need">
      <h2>You need</h2>
      <table className="mt-1">
        <tbody>
          {model.ingredients.map(({ what, much, other }) => (
            <tr key={what}>
              <th scope="row" className="border-b! border-rule! py-1.5! align-baseline! font-normal! text-ink!">
                {what}
              </th>
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
      {model.housekeeping.map((sentence) => (
        <Caution key={sentence}>{sentence}</Caution>
      ))}
    </section>
  )
}

function Step({ line }: { line: CardLine }) {
  return (
    <li className={`grid grid-cols-[28px_1fr] py-1.5 font-serif text-lg leading-snug ${line.own ? 'italic' : ''}`}>
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

function Doneness({ model }: { model: CardModel }) {
  if (model.doneness.length === 0) return null
  return (
    <section aria-label="How you know" className="mt-4">
      <h2>How you know</h2>
      <div className="scroll-x">
        <table className="mt-1">
          <thead>
            <tr>
              <th scope="col">when sliced</th>
              <th scope="col">middle</th>
              <th scope="col">off the heat at about</th>
              <th scope="col">the authority says</th>
            </tr>
          </thead>
          <tbody>
            {model.doneness.map((row) => (
              <tr key={row.word} className={row.here ? 'font-bold' : undefined}>
                <td>{row.word}</td>
                <td>{row.middle}</td>
                <td>{row.offHeat}</td>
                <td>{row.authority}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  )
}
