import 'server-only'
import type { EntryDocument } from '../log/entry'
import { sameDocument } from '../log/log'
import { readEntry } from '../log/read-entry'
import type { Problem } from '../refusals'
import type { Instant } from '../units'
import { type Asked, keepInTurn, type LogTurn } from './log-turn'

/** What became of one entry of a sending: `known` was kept before, `refused` is not kept. */
export type Kept =
  | { readonly id: string; readonly became: 'kept' | 'known'; readonly position: number }
  | { readonly id: string | null; readonly became: 'refused'; readonly problems: readonly Problem[] }
export type Sending = { readonly received: Instant; readonly entries: readonly Kept[] }

const OTHER_CONTENT =
  'Another entry is kept under this id, with other content. Log a new entry; to change one, log a correction that names it.'

/**
 * Keeps the entries of one sending, late or out of order as they may be, before it answers. `sent` is what the sender's
 * clock said. An entry that came before is answered as it was then; one that does not read, or that the sender may not
 * log, is refused by itself.
 */
export async function appendLog(
  shootId: string,
  sent: Instant,
  documents: readonly unknown[],
  faultsOf: (entry: EntryDocument) => readonly Problem[] = () => [],
): Promise<Sending> {
  const read = documents.map((document) => readOne(document, faultsOf))
  const asked: Asked = { sent, entries: read.filter((one): one is Wanted => !('problems' in one)) }
  const turn = await keepInTurn(shootId, asked)
  return { received: turn.received, entries: read.map((one, i) => becameOf(one, i, asked, turn)) }
}

type Wanted = EntryDocument & { readonly id: string }
type Refused = { readonly id: string | null; readonly problems: readonly Problem[] }
function readOne(document: unknown, faultsOf: (entry: EntryDocument) => readonly Problem[]): Wanted | Refused {
  const read = readEntry(document)
  const problems = read.ok ? faultsOf(document as EntryDocument) : read.problems
  if (problems.length === 0) return document as Wanted
  const { id } = (document ?? {}) as { id?: unknown }
  return { id: typeof id === 'string' ? id : null, problems }
}

function becameOf(one: Wanted | Refused, i: number, asked: Asked, { known, fresh, erased }: LogTurn): Kept {
  if ('problems' in one) {
    const { id, problems } = one as Refused
    return { id, became: 'refused', problems: problems.map((p) => ({ ...p, pointer: `/entries/${i}${p.pointer}` })) }
  }
  const earlier = known.get(one.id)
  const now = fresh.get(one.id)
  const line = (earlier ?? now?.line) as { position: number; document: unknown }
  if (!sameDocument(line.document as EntryDocument, erased(one)))
    return { id: one.id, became: 'refused', problems: [{ pointer: `/entries/${i}/id`, sentence: OTHER_CONTENT }] }
  return { id: one.id, became: now?.by === asked ? 'kept' : 'known', position: line.position }
}
