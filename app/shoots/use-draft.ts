'use client'
import { useCallback, useEffect, useState } from 'react'
import type { ShootDocument } from '@/lib/plan/shoot'

/**
 * What is being typed, kept in this browser until it is saved: a reload, a crash or a dead server loses nothing.
 * `key` names the shoot and the version the draft stands on.
 */
export function useDraft(key: string, saved: ShootDocument) {
  const [document, setDocument] = useState(saved)
  const [restored, setRestored] = useState(false)
  useEffect(() => {
    const kept = localStorage.getItem(key)
    if (!kept) return
    try {
      setDocument(JSON.parse(kept) as ShootDocument)
      setRestored(true)
    } catch {
      localStorage.removeItem(key)
    }
  }, [key])
  const keep = useCallback(
    (next: ShootDocument) => {
      setDocument(next)
      localStorage.setItem(key, JSON.stringify(next))
    },
    [key],
  )
  const forget = useCallback(() => {
    localStorage.removeItem(key)
    setRestored(false)
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
