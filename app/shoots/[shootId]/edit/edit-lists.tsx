import type { TakeRow } from '@/lib/export/best-takes'
import type { PickUp } from '@/lib/export/pick-ups'
import { Sideways } from '../../../ui/sideways'

export function Takes({ rows }: { rows: readonly TakeRow[] }) {
  return (
    <section aria-label="Takes" className="mt-8">
      <h2>Takes</h2>
      {rows.length === 0 && <p className="mt-2">No take was logged.</p>}
      {rows.length > 0 && (
        <>
          <Sideways of="Takes" className="relative">
            <table className="stacks mt-2">
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
          <p className="small mt-2">A time without frames is the set’s clock: no clip is known there.</p>
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
      <td className={row.best ? 'font-semibold' : ''}>{row.shot || `slate ${row.slate}`}</td>
      <td className="win" data-label="in">
        {row.timecodeIn || row.clockIn}
      </td>
      <td className="win" data-label="out">
        {row.timecodeOut || row.clockOut}
      </td>
      <td data-label="clip">{row.clip}</td>
      <td data-label="verdict">{row.best ? 'good, best' : row.verdict}</td>
      <td data-label="note">{row.note}</td>
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
          <span className="small">
            {one.priority}, {one.became}. Wants {one.wants}.
          </span>
          <span className="block">{one.how}</span>
        </li>
      ))}
    </ul>
  )
}
