'use client'
import { type ReactNode, useEffect, useRef } from 'react'

/** Fields folded away. A fault among them opens them; they close by hand only, never under somebody who types. */
export function Folded({ summary, fault, children }: { summary: string; fault: boolean; children: ReactNode }) {
  const details = useRef<HTMLDetailsElement>(null)
  useEffect(() => {
    if (fault && details.current) details.current.open = true
  }, [fault])
  return (
    <details className="mt-4" ref={details}>
      <summary>{summary}</summary>
      {children}
    </details>
  )
}
