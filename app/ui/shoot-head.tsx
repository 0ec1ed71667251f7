import Link from 'next/link'
import type { UnitSystem } from '@/lib/units'
import { factsOf, type OpenShoot } from '../workbench'
import { ArchiveLink } from './archive-link'
import { CrewLink } from './crew-link'
import { UndoButton } from './undo-button'
import { UnitsButton } from './units-button'

const PAGES = [
  ['plan', 'Plan'],
  ['day', 'Day'],
  ['calls', 'Calls'],
  ['set', 'Set'],
  ['card', 'Card'],
  ['wrap', 'Wrap'],
] as const
export type ShootPage = (typeof PAGES)[number][0]

/** Head of every page of a shoot: name and pages on the line, under it the facts and what is rarely wanted. */
export function ShootHead({ open, units, page }: { open: OpenShoot; units: UnitSystem; page: ShootPage }) {
  const { id, shoot, canUndo } = open
  return (
    <>
      <header className="head">
        <Link href="/" className="small" aria-label="All shoots">
          Shoots
        </Link>
        <span className="name">{shoot.title}</span>
        <nav aria-label="Shoot">
          {PAGES.map(([one, name]) => (
            <Link key={one} href={`/shoots/${id}/${one}`} aria-current={one === page ? 'page' : undefined}>
              {name}
            </Link>
          ))}
        </nav>
      </header>
      <div className="under-head">
        <p className="small">{factsOf(shoot, units)}</p>
        <div className="tools no-print">
          <UndoButton id={id} canUndo={canUndo} />
          <Link className="textlink" href={`/shoots/${id}/set/rehearsal`} prefetch={false}>
            Rehearse the day
          </Link>
          <CrewLink id={id} />
          <UnitsButton units={units} />
          <a className="textlink" href={`/api/shoots/${id}/export`} download>
            Export
          </a>
          <ArchiveLink id={id} />
        </div>
      </div>
    </>
  )
}
