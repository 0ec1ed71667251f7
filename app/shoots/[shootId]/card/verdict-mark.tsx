import type { FindingKind } from '@/lib/card/claim'

export const VERDICTS: Record<FindingKind, string> = {
  'borne-out': 'borne out',
  'borne-out-with-care': 'borne out with care',
  contradicted: 'contradicted',
  'cannot-be-checked': 'cannot be checked',
}
const SHAPES: Record<FindingKind, readonly string[]> = {
  'borne-out': ['M2 12l5 6L18 4'],
  'borne-out-with-care': ['M3 9l5 6L18 2', 'M2 21h3M8 21h3M14 21h3'],
  contradicted: ['M4 4l13 15M17 4L4 19'],
  'cannot-be-checked': ['M2 12h3M8.5 12h3M15 12h3'],
}

/** Drawn, not lettered: the fonts have no tick. The word stands beside it, so the mark itself is silent. */
export function VerdictMark({ finding }: { finding: FindingKind }) {
  return (
    <svg
      width="20"
      height="24"
      viewBox="0 0 20 24"
      aria-hidden="true"
      fill="none"
      stroke="var(--ink)"
      strokeWidth="2.25"
    >
      {SHAPES[finding].map((d) => (
        <path key={d} d={d} />
      ))}
    </svg>
  )
}
