import { archiveUnanswered } from '../words/shared'
import { type Answer, newWriteId, send } from './send'

/** The server takes 8 MB at once. */
const PIECE = 4_000_000

export interface TakenIn {
  readonly id: string
}

/** Sends an archive in pieces; `told` hears how much is there, from 0 to 1. Answers the name it was sent under. */
export async function sendArchive(file: File, told: (share: number) => void): Promise<Answer<string>> {
  const upload = newWriteId()
  for (let from = 0; from < file.size; from += PIECE) {
    const body = file.slice(from, from + PIECE)
    const response = await fetch(`/api/archives/${upload}?from=${from}`, { method: 'PUT', body }).catch(() => null)
    if (!response?.ok) {
      const said = await response?.json().catch(() => null)
      return { ok: false, sentence: said?.detail ?? archiveUnanswered, problems: [] }
    }
    told(Math.min(1, (from + PIECE) / file.size))
  }
  return { ok: true, value: upload }
}

export const takeArchive = (upload: string, copy: boolean): Promise<Answer<TakenIn>> =>
  send<TakenIn>('/api/archives', 'POST', { upload, copy })
