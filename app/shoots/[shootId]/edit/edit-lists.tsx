import type { TakeRow } from '@/lib/export/best-takes'
import type { PickUp } from '@/lib/export/pick-ups'
import { Sideways } from '../../../ui/sideways'
import {
  clipHead,
  goodBest,
  inWords,
  noTakeWasLogged,
  noteWords,
  out,
  setTimesWhy,
  slateWords,
  takes,
  verdictWords,
  wantsWords,
} from '../../../words/edit'

export function Takes({ rows }: { rows: readonly TakeRow[] }) {
  return (
    <section aria-label={takes} className="mt-8">
      <h2>{takes}</h2>
      {rows.length === 0 && <p className="mt-2">{noTakeWasLogged}</p>}
      {rows.length > 0 && (
        <>
          <Sideways of="Takes" className="relative">
            <table className="stacks trade mt-2">
              <thead>
                <tr>
                  {['take', 'shot', 'in', 'out', 'clip', 'verdict', 'note'].map((name) => (
                    <th key={name} scope="col">
                      {name}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {rows.map((row) => (
                  <TakeOf key={`${row.shot} ${row.slate} ${row.take} ${row.camera}`} row={row} />
                ))}
              </tbody>
            </table>
          </Sideways>
          <p className="small mt-2">{setTimesWhy}</p>
        </>
      )}
    </section>
  )
}

function TakeOf({ row }: { row: TakeRow }) {
  return (
    <tr>
      <td className="time">
        {row.camera} {row.take}
      </td>
      <td className={row.best ? 'font-semibold' : ''}>{row.shot || slateWords(row.slate)}</td>
      <td className="win" data-label={inWords}>
        {row.timecodeIn || row.clockIn}
      </td>
      <td className="win" data-label={out}>
        {row.timecodeOut || row.clockOut}
      </td>
      <td data-label={clipHead}>{row.clip}</td>
      <td data-label={verdictWords}>{row.best ? goodBest : row.verdict}</td>
      <td data-label={noteWords}>{row.note}</td>
    </tr>
  )
}

export function PickUps({ all }: { all: readonly PickUp[] }) {
  return (
    <ul className="m-0 mt-2 list-none p-0">
      {all.map((one) => (
        <li key={one.shot} className="max-w-[66ch] border-b border-rule py-2">
          <span className="font-semibold">
            {one.number} {one.title}
          </span>{' '}
          <span className="small">{wantsWords(one.priority, one.became, one.wants)}</span>
          <span className="block">{one.how}</span>
        </li>
      ))}
    </ul>
  )
}
