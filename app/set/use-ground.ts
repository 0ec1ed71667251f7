'use client'
import { useLayoutEffect } from 'react'
import { useSet } from './set-context'
import { useKept } from './use-set'

/** Black on white while the sun is up over the set, reversed after it; a press turns it over for good, a second one back. */
export function useGround(): { readonly dusk: boolean; readonly turn: () => void } {
  const { facts, now } = useSet()
  const [chosen, choose] = useKept<'sun' | 'day' | 'dusk'>('emberslate-set-ground', 'sun')
  const sunDown = facts.dark.some(({ from, to }) => from <= now && now < to)
  const dusk = chosen === 'sun' ? sunDown : chosen === 'dusk'
  const turn = () => choose(dusk === sunDown ? (dusk ? 'day' : 'dusk') : 'sun')
  // The whole page: overscroll and notches show it, and the board overrules what the phone prefers.
  useLayoutEffect(() => {
    const { classList } = document.documentElement
    classList.toggle('dusk', dusk)
    classList.toggle('day', !dusk)
    return () => classList.remove('dusk', 'day')
  }, [dusk])
  return { dusk, turn }
}
