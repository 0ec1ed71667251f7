import type { ReactNode } from 'react'

interface WorkingProps {
  /** "Forecasting 256 cooks". Nothing while nothing is worked out: the line keeps its place, so that nothing moves. */
  readonly what: string | null
  /** From 0 to 1, where it is known. */
  readonly done?: number | undefined
  /** What to do when it lasts: said after ten seconds. */
  readonly lasts?: ReactNode
}

/** What is being computed, in words. By the style sheet it shows after 300 ms only: what is quicker needs no line. */
export function Working({ what, done, lasts }: WorkingProps) {
  return (
    <div role="status" className="working">
      {what && (
        <p key={what}>
          {done !== undefined && <progress max={1} value={done} aria-label={what} />}
          {what}
        </p>
      )}
      {what && lasts && <p className="lasts">{lasts}</p>}
    </div>
  )
}
