import type { Problem } from '@/lib/refusals'
import { dayCannotBeLaidOut, noLayoutYet, shotsAndTasksNeedPeople, thereAreShotsAndNo } from '../../words/shared'

/** The same in the words of the page: where a camera and a person are added. */
const HERE: Record<string, string> = {
  '/cameras': thereAreShotsAndNo,
  '/people': shotsAndTasksNeedPeople,
}

/** A plan that can be forecast but not laid out: says what is missing. */
export function NoLayout({ problems }: { problems: readonly Problem[] }) {
  return (
    <section aria-label={noLayoutYet} className="mt-4">
      <h2>{dayCannotBeLaidOut}</h2>
      {problems.map((problem) => (
        <div className="conflict" key={problem.pointer + problem.sentence}>
          <p>{HERE[problem.pointer] ?? problem.sentence}</p>
        </div>
      ))}
    </section>
  )
}
