import type { JournalFile, LineFault } from './journal-lines'

/** What start-up has to say of a journal's lines: what is wrong where, what it means, and the way on. */
export function faultNotes({ shootId, file, faults }: JournalFile<unknown>): readonly string[] {
  const of = (kind: LineFault['is']) => faults.filter(({ is }) => is === kind)
  const [cutOff, damaged, newer] = [of('cut-off'), of('damaged'), of('newer')]
  const notes: string[] = []
  if (cutOff.length > 0)
    notes.push(
      `Skipped ${cutOff.length} half-written line(s) in ${file} (${numbers(cutOff)}); they were never confirmed.`,
    )
  if (damaged.length > 0)
    notes.push(
      `${file} does not read at line ${numbers(damaged)}: the disk changed what was written there. The other lines are kept, and what the database has of these is used. Make a backup, and look at the disk.`,
    )
  if (newer.length > 0)
    notes.push(
      `${file} was written by a newer Emberslate at line ${numbers(newer)} (it has ${[...new Set(newer.flatMap(({ keys }) => keys ?? []))].join(', ')}). The lines stay as they are; start the newer version to have all of shoot ${shootId}.`,
    )
  return notes
}

const MOST = 5
function numbers(faults: readonly LineFault[]): string {
  const first = faults.slice(0, MOST).map(({ line }) => line)
  return first.join(', ') + (faults.length > MOST ? ` and ${faults.length - MOST} more` : '')
}

/** Whole numbers from 1 that are not among these, the first few. */
export function gapsIn(present: ReadonlySet<number>): readonly number[] {
  let last = 0
  for (const one of present) last = Math.max(last, one)
  const gaps: number[] = []
  for (let at = 1; at < last && gaps.length <= MOST; at++) if (!present.has(at)) gaps.push(at)
  return gaps
}
