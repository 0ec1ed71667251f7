'use client'
import { useCallback, useState } from 'react'
import type { ShootDocument } from '@/lib/plan/shoot'

interface Told {
  readonly words: string
  /** Where in the document it was done, a JSON pointer: its line stands there. */
  readonly at: string
}
interface Done extends Told {
  readonly before: ShootDocument
  readonly after: ShootDocument
}
export type Act = (words: string, after: ShootDocument, at?: string) => void
export interface Actions {
  readonly act: Act
  /** The last thing done, as long as nothing was typed since. */
  readonly last: Told | null
  readonly undo: () => void
}

const KEPT = 50
/** Things done with one press, each taken back with one press, as long as nothing else was changed since. */
export function useActions(document: ShootDocument, change: (next: ShootDocument) => void): Actions {
  const [done, setDone] = useState<readonly Done[]>([])
  const last = done.at(-1)
  const standing = last && last.after === document ? last : undefined
  const act = useCallback(
    (words: string, after: ShootDocument, at = '') => {
      if (after === document) return
      setDone((all) => [...all.slice(-KEPT), { words, at, before: document, after }])
      change(after)
    },
    [document, change],
  )
  const undo = useCallback(() => {
    if (!standing) return
    setDone((all) => all.slice(0, -1))
    change(standing.before)
  }, [standing, change])
  return { act, last: standing ?? null, undo }
}
