import { toPointer } from '../plan/parse'
import { scanDocument } from '../plan/scan'
import type { Problem, Result } from '../refusals'
import { ENTRY, type Entry } from './entry'

/** The entry, or every fault in it with one sentence each, at its place. Never throws. */
export function readEntry(document: unknown): Result<Entry> {
  const scanned = scanDocument(document)
  if (scanned.length > 0) return { ok: false, problems: scanned }
  const parsed = ENTRY.safeParse(document, { reportInput: true })
  if (parsed.success) return { ok: true, value: parsed.data }
  const problems = parsed.error.issues.flatMap((issue): Problem[] => {
    if (issue.code !== 'unrecognized_keys') return [{ pointer: toPointer(issue.path), sentence: issue.message }]
    const sentences = issue.message.split('\n')
    return issue.keys.map((key, i) => ({ pointer: toPointer([...issue.path, key]), sentence: sentences[i] ?? '' }))
  })
  return { ok: false, problems }
}
