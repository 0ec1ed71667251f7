import Link from 'next/link'
import type { Problem } from '@/lib/refusals'
import {
  dayCannotBeLaidOut,
  noLayoutYet,
  putRightOnDay,
  shotsAndTasksNeedPeople,
  thereAreShotsAndNo,
} from '../../words/shared'

/** The same in the words of the page: where a camera and a person are added. */
const HERE: Record<string, string> = {
  '/cameras': thereAreShotsAndNo,
  '/people': shotsAndTasksNeedPeople,
}

interface NoLayoutProps {
  readonly problems: readonly Problem[]
  /** The shoot, where this is not its Day page already. */
  readonly id?: string
}
/** A plan that can be forecast but not laid out: says what is missing, and where to put it right. */
export function NoLayout({ problems, id }: NoLayoutProps) {
  return (
    <section aria-label={noLayoutYet} className="mt-4">
      <h2>{dayCannotBeLaidOut}</h2>
      {problems.map((problem) => (
        <div className="conflict" key={problem.pointer + problem.sentence}>
          <p>{HERE[problem.pointer] ?? problem.sentence}</p>
        </div>
      ))}
      {id && (
        <p className="mt-4">
          <Link className="btn main" href={`/shoots/${id}/day`}>
            {putRightOnDay}
          </Link>
        </p>
      )}
    </section>
  )
}
