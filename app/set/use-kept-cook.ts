'use client'
import { useSet } from './set-context'
import { useKept } from './use-set'

/** The roast that this device logged of last; one of another shoot gives way to the first of this. */
export function useKeptCook(): [string, (id: string) => void] {
  const { cooks } = useSet().session.day
  const first = cooks[0]?.id ?? ''
  const [cook, setCook] = useKept('emberslate-set-cook', first)
  return [cooks.some(({ id }) => id === cook) ? cook : first, setCook]
}
