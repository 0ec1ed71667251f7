'use client'
import { useEffect, useState } from 'react'

type Rest = typeof import('./rest-of-board')
const AGAIN_MS = 2000
let arrived: Rest | null = null

/**
 * The rest of the board, fetched at once and without being asked: a phone that is cut off later can fetch nothing. Tried
 * again until it is here; null until then.
 */
export function useRest(): Rest | null {
  const [rest, setRest] = useState(arrived)
  useEffect(() => {
    let again: ReturnType<typeof setTimeout> | undefined
    let gone = false
    const fetchIt = async () => {
      arrived ??= await import('./rest-of-board').catch(() => null)
      if (gone) return
      if (arrived) setRest(arrived)
      else again = setTimeout(fetchIt, AGAIN_MS)
    }
    void fetchIt()
    return () => {
      gone = true
      clearTimeout(again)
    }
  }, [])
  return rest
}
