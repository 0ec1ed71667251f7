import type { Route } from 'next'
import Link from 'next/link'
import type { ListedShoot } from '@/lib/data/list-shoots'
import * as words from '../words/start'
import { byDay, fromToday } from './by-day'

interface Props {
  readonly shoots: readonly ListedShoot[]
  readonly now: string
  /** Where a shoot opens: its plan, or its set board for who may not plan. */
  readonly pageOf: (id: string) => Route
  readonly dayOf: (date: string) => string
}

/** Shoots by their day; the nearest stand open, the rest folded. */
export function ShootList({ shoots, ...rest }: Props) {
  const { near, ahead, behind } = byDay(shoots, rest.now)
  return (
    <>
      <Rows shoots={near} {...rest} head />
      {ahead.length > 0 && (
        <details className="mt-4">
          <summary>{words.moreAhead(ahead.length)}</summary>
          <Rows shoots={ahead} {...rest} />
        </details>
      )}
      {behind.length > 0 && (
        <details className="mt-2">
          <summary>{words.moreBehind(behind.length)}</summary>
          <Rows shoots={behind} {...rest} />
        </details>
      )}
    </>
  )
}

function Rows({ shoots, now, pageOf, dayOf, head = false }: Props & { readonly head?: boolean }) {
  return (
    <table className="mt-4">
      <thead className={head ? '' : 'sr-only'}>
        <tr>
          <th scope="col">{words.shootHead}</th>
          <th scope="col" className="pl-4">
            {words.dayHead}
          </th>
        </tr>
      </thead>
      <tbody>
        {shoots.map(({ id, title, date }) => (
          <tr key={id}>
            <td className="py-1">
              <Link className="inline-block py-2 font-serif text-lg font-semibold wrap-anywhere" href={pageOf(id)}>
                {title}
              </Link>
            </td>
            <td className="w-px pl-4 whitespace-nowrap">
              {dayOf(date)}
              <span className="small block">{fromToday(date, now)}</span>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
