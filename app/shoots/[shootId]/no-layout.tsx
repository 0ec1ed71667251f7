import type { Problem } from '@/lib/refusals'

/** The same in the words of the page: where a camera and a person are added. */
const HERE: Record<string, string> = {
  '/cameras': 'There are shots and no camera. Name one under “The crew” on the Day page.',
  '/people': 'Shots and tasks need people and there is nobody. Add a person under “The crew” on the Day page.',
}

/** A plan that can be forecast but not laid out: says what is missing. */
export function NoLayout({ problems }: { problems: readonly Problem[] }) {
  return (
    <section aria-label="No layout yet" className="mt-4">
      <h2>The day cannot be laid out yet.</h2>
      {problems.map((problem) => (
        <div className="conflict" key={problem.pointer + problem.sentence}>
          <p>{HERE[problem.pointer] ?? problem.sentence}</p>
        </div>
      ))}
    </section>
  )
}
