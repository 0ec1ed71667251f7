import { useEffect, useRef } from 'react'

const STOPS = 'a[href], button, input, select, textarea, summary, [tabindex]'

/**
 * Of what lies over the board: it has the focus while it lies there, Tab goes round in it, Escape goes back where there
 * is a way back, and whatever had the focus before has it again.
 */
export function useOverBoard(which: string | undefined, back?: () => void) {
  const box = useRef<HTMLDivElement>(null)
  const goBack = useRef(back)
  goBack.current = back
  useEffect(() => {
    const here = box.current
    if (which === undefined || !here) return
    const before = document.activeElement
    here.focus()
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Tab') return goRound(here, event)
      if (event.key !== 'Escape' || !goBack.current) return
      event.stopPropagation()
      goBack.current()
    }
    here.addEventListener('keydown', onKey)
    return () => {
      here.removeEventListener('keydown', onKey)
      if (before instanceof HTMLElement && before.isConnected) before.focus()
    }
  }, [which])
  return box
}

/** From the last to the first, and back: the board beneath cannot be seen. */
function goRound(box: HTMLElement, event: KeyboardEvent) {
  if (event.defaultPrevented) return
  const stops = [...box.querySelectorAll<HTMLElement>(STOPS)].filter(
    (one) => one.tabIndex >= 0 && !one.matches(':disabled') && one.checkVisibility(),
  )
  const at = document.activeElement
  const [edge, other] = event.shiftKey ? [stops[0], stops.at(-1)] : [stops.at(-1), stops[0]]
  if (at !== edge && !(at === box && event.shiftKey)) return
  event.preventDefault()
  other?.focus()
}
