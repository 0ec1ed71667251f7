'use client'
import { type ReactNode, useEffect, useRef } from 'react'
import { asRead } from '@/lib/plan/as-read'
import { useReadersWay } from './reader'

/** Fields folded away. A fault among them opens them; they close by hand only, never under somebody who types. */
export function Folded({ summary, fault, children }: { summary: string; fault: boolean; children: ReactNode }) {
  const way = useReadersWay()
  const details = useRef<HTMLDetailsElement>(null)
  useEffect(() => {
    if (fault && details.current) details.current.open = true
  }, [fault])
  return (
    <details className="mt-4" ref={details}>
      <summary>{asRead(summary, way)}</summary>
      {children}
    </details>
  )
}
