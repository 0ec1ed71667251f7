import type { ReadersWay } from '@/lib/plan/as-read'
import type { Problem } from '@/lib/refusals'
import { instant } from '@/lib/units'
import { clockFace } from '../set/clock-face'
import { useReadersWay } from '../ui/reader'
import { UndoLine } from '../ui/undo-line'
import {
  awaySince,
  notSavedYet,
  notTaken,
  putBy,
  savedElsewhere,
  saved as savedWord,
  saveMineOver,
  saving,
  savingInMoment,
  showTheirs,
} from '../words/shared'
import type { Saved, SaveState } from './use-saved'

const WORDS: Record<Exclude<SaveState, 'away'>, string> = {
  saved: savedWord,
  typing: savingInMoment,
  saving,
  wrong: notSavedYet,
  stale: savedElsewhere,
}

/** By the shoot's clock, or the browser's while the zone is being typed. */
function clockAt(since: number, zone: unknown, way: ReadersWay): string {
  try {
    return clockFace(String(zone), way)(instant(since))
  } catch {
    return clockFace(Intl.DateTimeFormat().resolvedOptions().timeZone, way)(instant(since))
  }
}
function wordsOf({ state, away, document }: Saved, way: ReadersWay): string {
  // While it is tried again the line stays: it does not flicker between two sentences.
  if (!away) return state === 'away' ? savingInMoment : WORDS[state]
  return away.why === null ? awaySince(clockAt(away.since, document.zone, way)) : notTaken(away.why)
}

/** One line that says whether what was typed is safe. `problems` are those that no field shows. */
export function SaveLine({ saved, problems }: { saved: Saved; problems: readonly Problem[] }) {
  const { state } = saved
  const way = useReadersWay()
  const mine = saved.putBy
  return (
    <div role="status" className="small min-h-6">
      {wordsOf(saved, way)}
      {state === 'wrong' &&
        problems.slice(0, 3).map((problem) => (
          <span key={problem.pointer + problem.sentence} className="says">
            {problem.sentence}
          </span>
        ))}
      {state === 'stale' && (
        <span className="flex gap-4">
          <button type="button" className="textlink" onClick={saved.keepMine}>
            {saveMineOver}
          </button>
          <button type="button" className="textlink" onClick={saved.takeTheirs}>
            {showTheirs}
          </button>
        </span>
      )}
      {mine && <UndoLine said={putBy} undo={() => saved.change(mine)} />}
    </div>
  )
}
