'use client'
import { useRouter } from 'next/navigation'
import { useCallback, useEffect, useRef, useState } from 'react'
import type { ShootDocument } from '@/lib/plan/shoot'
import type { Problem } from '@/lib/refusals'
import { newWriteId, send } from '../ui/send'
import { useDraft } from './use-draft'

const SETTLE_MS = 600
export type SaveState = 'saved' | 'typing' | 'saving' | 'wrong' | 'away' | 'stale'

/**
 * A document that saves itself a moment after the typing stops. While it cannot be saved (a wrong field, a dead server,
 * somebody else's newer version) everything typed stays in this browser.
 */
export function useSaved(shootId: string, version: number, saved: ShootDocument) {
  const router = useRouter()
  const { document, keep, forget, reset, restored } = useDraft(`emberslate-draft-${shootId}-${version}`, saved)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [state, setState] = useState<SaveState>('saved')
  const base = useRef(version)
  const pending = useRef<ShootDocument | null>(null)
  const writeId = useRef('')
  useEffect(() => {
    // A version that is not ours (an undo, another window) replaces what is shown; our own is shown already.
    if (version === base.current) return
    base.current = version
    pending.current = null
    reset(saved)
    setState('saved')
    setProblems([])
  }, [version, saved, reset])

  const save = useCallback(async () => {
    const sending = pending.current
    if (!sending) return
    setState('saving')
    const answer = await send<{ version: number }>(`/api/shoots/${shootId}`, 'PUT', {
      document: sending,
      writeId: writeId.current,
      baseVersion: base.current,
    })
    if (answer.ok) base.current = answer.value.version
    if (pending.current !== sending) return
    setProblems(answer.ok ? [] : answer.problems)
    if (answer.ok) {
      pending.current = null
      forget()
      setState('saved')
      router.refresh()
    } else if (answer.code === 'stale') setState('stale')
    else setState(answer.problems.length > 0 ? 'wrong' : 'away')
  }, [shootId, forget, router])

  useEffect(() => {
    if (document === saved && !restored) return
    if (restored && !pending.current) {
      pending.current = document
      writeId.current = newWriteId()
    }
    if (!pending.current) return
    setState('typing')
    const timer = setTimeout(save, SETTLE_MS)
    return () => clearTimeout(timer)
  }, [document, saved, restored, save])

  const change = useCallback(
    (next: ShootDocument) => {
      pending.current = next
      writeId.current = newWriteId()
      keep(next)
    },
    [keep],
  )
  return { document, change, problems, state }
}
