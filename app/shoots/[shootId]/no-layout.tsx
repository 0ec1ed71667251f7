import type { Problem } from '@/lib/refusals'

/** A plan that can be forecast but not laid out: says what is missing. */
export function NoLayout({ problems }: { problems: readonly Problem[] }) {
  return (
    <section aria-label="No layout yet" className="mt-4">
      <h2>The day cannot be laid out yet.</h2>
      {problems.map((problem) => (
        <div className="conflict" key={problem.pointer + problem.sentence}>
          <p>{problem.sentence}</p>
        </div>
      ))}
    </section>
  )
}
