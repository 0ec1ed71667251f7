import { entryId, RANDOM_BYTES } from '@/lib/log/entry-id'
import type { Problem } from '@/lib/refusals'
import { instant } from '@/lib/units'
import { unanswered, unreadableAnswer } from '../words/shared'

export type Refused = { ok: false; sentence: string; problems: readonly Problem[]; code?: string }
export type Answer<T = unknown> = { ok: true; value: T } | Refused

/** A write id made here, so that a write sent twice is done once. `getRandomValues` also works without a secure context. */
export const newWriteId = () => entryId(instant(Date.now()), crypto.getRandomValues(new Uint8Array(RANDOM_BYTES)))

/** A dead line is a sentence too. */
export const noAnswer = (): Refused => ({ ok: false, sentence: unanswered, problems: [] })

/** Reads the problem document (RFC 9457). */
export async function refusalIn(response: Response): Promise<Refused> {
  const value = await response.json().catch(() => null)
  return {
    ok: false,
    sentence: value?.detail ?? value?.title ?? unreadableAnswer,
    problems: value?.problems ?? value?.errors ?? [],
    code: value?.code,
  }
}

/** Sends JSON and reads the answer or what was refused. */
export async function send<T>(
  path: string,
  method: 'POST' | 'PUT' | 'DELETE',
  body: Record<string, unknown>,
  signal?: AbortSignal,
): Promise<Answer<T>> {
  try {
    const response = await fetch(path, {
      method,
      signal,
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ writeId: newWriteId(), ...body }),
    })
    if (!response.ok) return refusalIn(response)
    return { ok: true, value: (await response.json().catch(() => null)) as T }
  } catch (fault) {
    if (signal?.aborted) throw fault
    return noAnswer()
  }
}
