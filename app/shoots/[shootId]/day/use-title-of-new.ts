'use client'
import { useEffect, useState } from 'react'

/** What was just added is named next: its title has the focus as soon as its row stands. */
export function useTitleOfNew(): (id: string) => void {
  const [added, setAdded] = useState<string | null>(null)
  useEffect(() => {
    if (added === null) return
    document.querySelector<HTMLInputElement>(`[data-shot="${added}"] .name input`)?.focus()
    setAdded(null)
  }, [added])
  return setAdded
}
