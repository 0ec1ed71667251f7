import type { EntryDocument } from '@/lib/log/entry'
import type { Instant } from '@/lib/units'
import { unansweredPress } from '../../words/readings'
import { backoffMs } from '../feed/device-clock'
import type { Wire } from '../feed/wire'

const BATCH = 400
const ANSWER_WITHIN_MS = 30_000
const TRIES = 4

export interface SentSoFar {
  readonly kept: number
  readonly known: number
  readonly refused: number
  /** Of the first that was refused, or of why the rest waits. */
  readonly sentence: string | null
}
export const NONE_SENT: SentSoFar = { kept: 0, known: 0, refused: 0, sentence: null }
export const countOf = ({ kept, known, refused }: SentSoFar) => kept + known + refused

/** Sends entries in batches, each again until it is answered or in vain. */
export async function sendEntries(
  wire: Pick<Wire, 'send'>,
  entries: readonly EntryDocument[],
  now: () => Instant,
  told: (sofar: SentSoFar) => void,
): Promise<SentSoFar> {
  let sofar = NONE_SENT
  for (let i = 0; i < entries.length; i += BATCH) {
    const next = await sendBatch(wire, entries.slice(i, i + BATCH), now)
    sofar = {
      kept: sofar.kept + next.kept,
      known: sofar.known + next.known,
      refused: sofar.refused + next.refused,
      sentence: sofar.sentence ?? next.sentence,
    }
    told(sofar)
    if (countOf(next) === 0) return sofar
  }
  return sofar
}

async function sendBatch(wire: Pick<Wire, 'send'>, batch: readonly EntryDocument[], now: () => Instant) {
  let sentence = unansweredPress
  for (let tried = 0; tried < TRIES; tried++) {
    const answer = await wire.send(now(), batch, AbortSignal.timeout(ANSWER_WITHIN_MS)).catch(() => null)
    if (answer?.heard === 'kept') {
      const count = (what: string) => answer.entries.filter(({ became }) => became === what).length
      const first = answer.entries.find((one) => one.became === 'refused')
      const why = first?.became === 'refused' ? (first.problems[0]?.sentence ?? null) : null
      return { kept: count('kept'), known: count('known'), refused: count('refused'), sentence: why }
    }
    if (answer?.heard === 'refused')
      return { kept: 0, known: 0, refused: batch.length, sentence: answer.problems[0]?.sentence ?? answer.sentence }
    if (answer) sentence = answer.sentence
    const waitMs = answer?.waitMs ?? backoffMs(tried, 4000)
    await new Promise((resolve) => setTimeout(resolve, waitMs))
  }
  return { ...NONE_SENT, sentence }
}
