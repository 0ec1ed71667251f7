/** Screens whose texts have not moved to app/words yet. Rows only go. */
export const STILL_TO_MOVE: readonly string[] = ['app/components/board-parts.tsx', 'app/components/laptop-parts.tsx']
