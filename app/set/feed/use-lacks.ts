'use client'
import { useEffect, useState } from 'react'
import { abilities, missingWords } from './missing'

/** What this browser lacks for a set, in a sentence; known once the page is in it. */
export function useLacks(): string | null {
  const [lacks, setLacks] = useState<string | null>(null)
  useEffect(() => setLacks(missingWords(abilities())), [])
  return lacks
}
