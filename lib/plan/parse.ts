import type { z } from 'zod'
import type { Problem, Result } from '../refusals'
import { checkShoot } from './check-shoot'
import { jsonFault } from './json-fault'
import { scanDocument } from './scan'
import { SHOOT, type Shoot } from './shoot'

export { problemsForLayout } from './layout-rules'

/** A shoot file of the largest permitted day is under 200 kB. */
export const LARGEST_BYTES = 1_000_000

export const toPointer = (path: readonly PropertyKey[]) =>
  path.map((step) => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('')

/** The shoot, or every fault in it with one sentence each, at its place. Never throws, whatever it is given. */
export function parseShoot(document: unknown): Result<Shoot> {
  const scanned = scanDocument(document)
  if (scanned.length > 0) return { ok: false, problems: scanned }
  const parsed = SHOOT.safeParse(document, { reportInput: true })
  if (!parsed.success) return { ok: false, problems: parsed.error.issues.flatMap(toProblems) }
  const problems = checkShoot(parsed.data)
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: parsed.data }
}

/** The same from text: too large, or broken JSON, is told before anything else. */
export function parseShootText(json: string): Result<Shoot> {
  const bytes = new TextEncoder().encode(json).length
  if (bytes > LARGEST_BYTES) return refused(tooLarge(bytes))
  const text = json.startsWith('\uFEFF') ? json.slice(1) : json
  const fault = jsonFault(text)
  return fault ? refused(fault) : parseShoot(JSON.parse(text))
}

const refused = (sentence: string): Result<Shoot> => ({ ok: false, problems: [{ pointer: '', sentence }] })
export const tooLarge = (bytes: number) =>
  `The file holds ${(bytes / 1e6).toFixed(1)} MB; a shoot file is 1 MB at most. Choose the JSON file that was exported here.`

function toProblems(issue: z.core.$ZodIssue): Problem[] {
  // Unknown keys come as one issue with a sentence a line: each is told at its own key.
  if (issue.code === 'unrecognized_keys') {
    const sentences = issue.message.split('\n')
    return issue.keys.map((key, i) => ({ pointer: toPointer([...issue.path, key]), sentence: sentences[i] ?? '' }))
  }
  return [{ pointer: toPointer(issue.path), sentence: issue.message }]
}
