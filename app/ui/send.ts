import { entryId, RANDOM_BYTES } from '@/lib/log/entry-id'
import type { Problem } from '@/lib/refusals'
import { instant } from '@/lib/units'
import { serverDidNotUnderstand, serverDoesNotAnswerWhat } from '../words/shared'

export type Answer<T = unknown> =
  | { ok: true; value: T }
  | { ok: false; sentence: string; problems: readonly Problem[]; code?: string }

/** A write id made here, so that a write sent twice is done once. `getRandomValues` also works without a secure context. */
export const newWriteId = () => entryId(instant(Date.now()), crypto.getRandomValues(new Uint8Array(RANDOM_BYTES)))

/** Sends JSON and reads the answer or the problem document (RFC 9457); a dead line is a sentence too. */
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
    const value = await response.json().catch(() => null)
    if (response.ok) return { ok: true, value: value as T }
    return {
      ok: false,
      sentence: value?.detail ?? value?.title ?? serverDidNotUnderstand,
      problems: value?.problems ?? value?.errors ?? [],
      code: value?.code,
    }
  } catch (fault) {
    if (signal?.aborted) throw fault
    return { ok: false, sentence: serverDoesNotAnswerWhat, problems: [] }
  }
}
