import Link from 'next/link'
import type { UnitSystem } from '@/lib/units'
import { CrewLink } from './crew-link'
import { UndoButton } from './undo-button'
import { UnitsButton } from './units-button'

const PAGES = [
  ['plan', 'Plan'],
  ['day', 'Day'],
  ['calls', 'Calls'],
  ['set', 'Set'],
  ['card', 'Card'],
] as const
export type ShootPage = (typeof PAGES)[number][0]

/** Title line of every page of a shoot: name, facts, the pages, undo of the last change. */
export function ShootHead(props: {
  id: string
  title: string
  facts: string
  page: ShootPage
  canUndo: boolean
  units: UnitSystem
}) {
  return (
    <>
      <header className="head">
        <Link href="/" className="small" aria-label="All shoots">
          Shoots
        </Link>
        <span className="name">{props.title}</span>
        <span className="small">{props.facts}</span>
        <nav aria-label="Shoot">
          {PAGES.map(([page, name]) => (
            <Link
              key={page}
              href={`/shoots/${props.id}/${page}`}
              aria-current={page === props.page ? 'page' : undefined}
            >
              {name}
            </Link>
          ))}
        </nav>
      </header>
      <div className="no-print mb-2 flex flex-wrap justify-end gap-x-6">
        <Link className="textlink small no-print" href={`/shoots/${props.id}/set/rehearsal`} prefetch={false}>
          Rehearse the day
        </Link>
        <CrewLink id={props.id} />
        <UnitsButton units={props.units} />
        <a className="textlink small no-print" href={`/api/shoots/${props.id}/export`} download>
          Export
        </a>
        <UndoButton id={props.id} canUndo={props.canUndo} />
      </div>
    </>
  )
}
