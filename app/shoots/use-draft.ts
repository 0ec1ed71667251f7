'use client'
import { useCallback, useEffect, useState } from 'react'
import { hasShape } from '@/lib/plan/document-shape'
import type { ShootDocument } from '@/lib/plan/shoot'

/** What was typed, and the saved version it was typed over. */
export interface Draft {
  readonly base: number
  readonly document: ShootDocument
  /** Under which it is being saved: sent once more after a reload, it is known and done once. */
  readonly writeId?: string
}

function read(key: string): Draft | null {
  try {
    const text = localStorage.getItem(key)
    const kept = JSON.parse(text ?? 'null') as Partial<Draft> | null
    if (kept && typeof kept.base === 'number' && hasShape(kept.document)) return kept as Draft
    // What an older version kept is put by, so that it neither breaks the page nor is written over.
    if (text !== null) localStorage.setItem(`${key}-unread`, text)
    localStorage.removeItem(key)
    return null
  } catch {
    return null
  }
}

/** What is being typed, kept in this browser until it is saved: a reload, a crash or a dead server loses nothing. */
export function useDraft(key: string, saved: ShootDocument) {
  const [document, setDocument] = useState(saved)
  const [restored, setRestored] = useState<Draft | null>(null)
  useEffect(() => {
    const kept = read(key)
    if (!kept) return
    setDocument(kept.document)
    setRestored(kept)
  }, [key])
  const keep = useCallback(
    (next: ShootDocument, base = 0, writeId?: string) => {
      setDocument(next)
      localStorage.setItem(key, JSON.stringify({ base, document: next, ...(writeId && { writeId }) } satisfies Draft))
    },
    [key],
  )
  const forget = useCallback(() => {
    localStorage.removeItem(key)
    setRestored(null)
  }, [key])
  const reset = useCallback(
    (next: ShootDocument) => {
      forget()
      setDocument(next)
    },
    [forget],
  )
  return { document, keep, forget, reset, restored }
}
