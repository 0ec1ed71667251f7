import type { Problem } from '@/lib/refusals'
import type { Saved, SaveState } from './use-saved'

const WORDS: Record<SaveState, string> = {
  saved: 'Saved.',
  typing: 'Saving in a moment.',
  saving: 'Saving.',
  wrong: 'Not saved yet: put right what is marked. Everything typed is kept in this browser.',
  away: 'The server does not answer. Everything typed is kept in this browser and saved as soon as it does.',
  stale: 'This shoot was saved elsewhere meanwhile. What you typed is kept in this browser and not saved yet.',
}

/** One line that says whether what was typed is safe. `problems` are those that no field shows. */
export function SaveLine({ saved, problems }: { saved: Saved; problems: readonly Problem[] }) {
  const { state } = saved
  return (
    <div role="status" className="small min-h-6">
      {WORDS[state]}
      {state === 'wrong' &&
        problems.slice(0, 3).map((problem) => (
          <span key={problem.pointer + problem.sentence} className="says">
            {problem.sentence}
          </span>
        ))}
      {state === 'stale' && (
        <span className="flex gap-4">
          <button type="button" className="textlink" onClick={saved.keepMine}>
            Save mine over it
          </button>
          <button type="button" className="textlink" onClick={saved.takeTheirs}>
            Show theirs
          </button>
        </span>
      )}
    </div>
  )
}
