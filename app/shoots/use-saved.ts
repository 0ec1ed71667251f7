'use client'
import { useRouter } from 'next/navigation'
import { useCallback, useEffect, useRef, useState } from 'react'
import type { ShootDocument } from '@/lib/plan/shoot'
import type { Problem } from '@/lib/refusals'
import { newWriteId, send } from '../ui/send'
import { whileOpen } from './unsaved'
import { useDraft } from './use-draft'

const SETTLE_MS = 600
const RETRY_MS = 5000
/** Why what was typed waits. */
interface Away {
  readonly since: number
  /** What the server said, where it answered. */
  readonly why: string | null
}
export type SaveState = 'saved' | 'typing' | 'saving' | 'wrong' | 'away' | 'stale'

/**
 * A document that saves itself a moment after the typing stops. While it cannot be saved (a wrong field, a dead server,
 * somebody else's newer version) everything typed stays in this browser.
 */
export function useSaved(shootId: string, version: number, saved: ShootDocument) {
  const router = useRouter()
  const { document, keep, forget, reset, restored } = useDraft(`emberslate-draft-${shootId}`, saved)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [state, setState] = useState<SaveState>('saved')
  /** The saved version that what is shown stands on. */
  const base = useRef(version)
  /** What waits to be saved, under one write id however often it is sent. */
  const pending = useRef<{ document: ShootDocument; writeId: string } | null>(null)

  const [away, setAway] = useState<Away | null>(null)
  /** What was typed and put by for somebody else's, until something is typed anew. */
  const [putBy, setPutBy] = useState<ShootDocument | null>(null)

  /** A save that is not answered yet may be the newer version itself; its answer says whose it is. */
  const isSending = useRef(false)

  const takeTheirs = useCallback(() => {
    base.current = version
    pending.current = null
    reset(saved)
    setProblems([])
    setState('saved')
  }, [version, saved, reset])

  // biome-ignore lint/correctness/useExhaustiveDependencies: what waited for an answer is looked at when it is there
  useEffect(() => {
    // Our own save is shown already, and an answer overtaken by a later save is old news.
    if (version <= base.current || isSending.current) return
    if (pending.current) setState('stale')
    else takeTheirs()
  }, [version, state, takeTheirs])

  const sendPending = useCallback(async () => {
    const sending = pending.current
    if (!sending) return
    setState('saving')
    isSending.current = true
    const answer = await send<{ version: number }>(`/api/shoots/${shootId}`, 'PUT', {
      ...sending,
      baseVersion: base.current,
    })
    isSending.current = false
    if (answer.ok) base.current = answer.value.version
    if (pending.current !== sending) {
      if (pending.current) keep(pending.current.document, base.current, pending.current.writeId)
      return
    }
    setProblems(answer.ok ? [] : answer.problems)
    const isAway = !answer.ok && answer.code !== 'stale' && answer.problems.length === 0
    setAway((was) => (isAway ? { since: was?.since ?? Date.now(), why: answer.code ? answer.sentence : null } : null))
    if (answer.ok) {
      pending.current = null
      forget()
      setState('saved')
      router.refresh()
    } else if (answer.code === 'stale') {
      setState('stale')
      router.refresh()
    } else setState(isAway ? 'away' : 'wrong')
  }, [shootId, keep, forget, router])
  /** One after another: a save sent before the last one is answered would seem to stand on an older version. */
  const line = useRef(Promise.resolve())
  const save = useCallback(() => {
    line.current = line.current.then(sendPending)
    return line.current
  }, [sendPending])

  useEffect(() => {
    if (!restored || pending.current) return
    pending.current = { document: restored.document, writeId: restored.writeId ?? newWriteId() }
    base.current = restored.base
    // The newer version may be this very draft, whose answer the page did not wait for: the server knows.
    if (restored.base < version) void save()
  }, [restored, version, save])

  // biome-ignore lint/correctness/useExhaustiveDependencies: each change of the document begins a new wait
  useEffect(() => {
    if (!pending.current || (base.current < version && !isSending.current)) return
    setState('typing')
    const timer = setTimeout(save, SETTLE_MS)
    return () => clearTimeout(timer)
  }, [document, save])

  useEffect(() => {
    if (state !== 'away') return
    const timer = setTimeout(save, RETRY_MS)
    return () => clearTimeout(timer)
  }, [state, save])

  useEffect(
    () =>
      whileOpen(async () => {
        await save()
        return pending.current === null
      }),
    [save],
  )

  const change = useCallback(
    (next: ShootDocument) => {
      const writeId = newWriteId()
      pending.current = { document: next, writeId }
      setPutBy(null)
      keep(next, base.current, writeId)
    },
    [keep],
  )
  const showTheirs = useCallback(() => {
    const mine = pending.current?.document ?? null
    takeTheirs()
    setPutBy(mine)
  }, [takeTheirs])
  const keepMine = useCallback(async () => {
    setState('saving')
    // The page may not know the newer version yet: it is still being worked out.
    const newest = await fetch(`/api/shoots/${shootId}`)
      .then((answer): Promise<{ version: number }> => answer.json())
      .catch(() => null)
    base.current = newest?.version ?? version
    void save()
  }, [shootId, version, save])
  return { document, change, problems, state, away, keepMine, takeTheirs: showTheirs, putBy }
}
export type Saved = ReturnType<typeof useSaved>
