import type { Problem } from '@/lib/refusals'
import type { SaveState } from './use-saved'

const WORDS: Record<SaveState, string> = {
  saved: 'Saved.',
  typing: 'Saving in a moment.',
  saving: 'Saving.',
  wrong: 'Not saved yet: put right what is marked. Everything typed is kept in this browser.',
  away: 'The server does not answer. Everything typed is kept in this browser and saved with the next change.',
  stale:
    'Somebody else saved this shoot meanwhile. Yours is kept in this browser: reload to see theirs, then change again.',
}

/** One line that says whether what was typed is safe. */
export function SaveLine({ state, problems }: { state: SaveState; problems: readonly Problem[] }) {
  return (
    <div role="status" className="small min-h-6">
      {WORDS[state]}
      {state === 'wrong' &&
        problems.slice(0, 3).map((problem) => (
          <span key={problem.pointer + problem.sentence} className="says">
            {problem.sentence}
          </span>
        ))}
    </div>
  )
}
