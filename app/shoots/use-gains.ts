'use client'
import { useEffect, useState } from 'react'
import type { ShootDocument } from '@/lib/plan/shoot'
import { send } from '../ui/send'
import type { Gain } from './gains'

/** Well after the preview, which is what the person is waiting for. */
const SETTLE_MS = 1200

/** What measuring would do, a while after the typing stops; nothing while a field is wrong or the plan is changing. */
export function useGains(document: ShootDocument, ready: boolean): readonly Gain[] {
  const [gains, setGains] = useState<readonly Gain[]>([])
  useEffect(() => {
    setGains([])
    if (!ready) return
    const control = new AbortController()
    const timer = setTimeout(async () => {
      try {
        const answer = await send<readonly Gain[]>('/api/gains', 'POST', { document }, control.signal)
        if (answer.ok) setGains(answer.value)
      } catch {
        // Overtaken by newer typing; its own answer follows.
      }
    }, SETTLE_MS)
    return () => {
      clearTimeout(timer)
      control.abort()
    }
  }, [document, ready])
  return gains
}
