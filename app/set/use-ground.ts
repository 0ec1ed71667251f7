'use client'
import { useEffect } from 'react'
import { useSet } from './set-context'
import { useKept } from './use-set'

/** Black on white while the sun is up over the set, reversed after it; a press turns it over for good, a second one back. */
export function useGround(): { readonly dusk: boolean; readonly turn: () => void } {
  const { facts, now } = useSet()
  const [chosen, choose] = useKept<'sun' | 'day' | 'dusk'>('emberslate-set-ground', 'sun')
  const sunDown = facts.dark.some(({ from, to }) => from <= now && now < to)
  const dusk = chosen === 'sun' ? sunDown : chosen === 'dusk'
  const turn = () => choose(dusk === sunDown ? (dusk ? 'day' : 'dusk') : 'sun')
  useEffect(() => {
    // The page behind the board too: overscroll and notches show it.
    document.documentElement.classList.toggle('dusk', dusk)
    return () => document.documentElement.classList.remove('dusk')
  }, [dusk])
  return { dusk, turn }
}
