'use client'
import { useCallback, useState } from 'react'
import type { ShootDocument } from '@/lib/plan/shoot'

interface Done {
  readonly words: string
  readonly before: ShootDocument
  readonly after: ShootDocument
}
export interface Actions {
  readonly act: (words: string, after: ShootDocument) => void
  /** The last thing done, as long as nothing was typed since. */
  readonly last: string | null
  readonly undo: () => void
}

const KEPT = 50
/** Things done with one press, each taken back with one press, as long as nothing else was changed since. */
export function useActions(document: ShootDocument, change: (next: ShootDocument) => void): Actions {
  const [done, setDone] = useState<readonly Done[]>([])
  const last = done.at(-1)
  const standing = last && last.after === document ? last : undefined
  const act = useCallback(
    (words: string, after: ShootDocument) => {
      if (after === document) return
      setDone((all) => [...all.slice(-KEPT), { words, before: document, after }])
      change(after)
    },
    [document, change],
  )
  const undo = useCallback(() => {
    if (!standing) return
    setDone((all) => all.slice(0, -1))
    change(standing.before)
  }, [standing, change])
  return { act, last: standing?.words ?? null, undo }
}
