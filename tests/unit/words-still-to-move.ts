/** Screens whose texts have not moved to app/words yet. Rows only go. */
export const STILL_TO_MOVE: readonly string[] = [
  'app/cards/own-questions.ts',
  'app/components/board-parts.tsx',
  'app/components/laptop-parts.tsx',
  'app/layout.tsx',
  'app/set/board.tsx',
  'app/set/typed-temp.ts',
  'app/shoots/[shootId]/card/card-desk.tsx',
  'app/shoots/[shootId]/card/finding.tsx',
  'app/shoots/[shootId]/day/does-not-fit.tsx',
  'app/shoots/[shootId]/day/shot-more.tsx',
  'app/shoots/[shootId]/day/task-fields.ts',
  'app/shoots/heat-line-input.ts',
  'app/workbench.ts',
]
