'use client'
import { useEffect, useRef, useState } from 'react'
import type { ShootDocument } from '@/lib/plan/shoot'
import type { Problem } from '@/lib/refusals'
import { useReadersWay } from '../ui/reader'
import { send } from '../ui/send'
import type { Preview } from './preview'
import { draftHere, previewHere, readyHere } from './preview-here'

const SETTLE_MS = 150

/**
 * The forecast of what is typed, from this browser's own workers or else the server: the heat line follows each key as
 * a draft, everything else a moment after the typing stops. While a field is wrong the last good picture stays.
 */
export function usePreview(document: ShootDocument, first: Preview | null) {
  const [preview, setPreview] = useState<Preview | null>(first)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [working, setWorking] = useState(first === null)
  /** What the whole was last told of, and what stands in the form. */
  const seen = useRef(first ? document : null)
  const typed = useRef(document)
  typed.current = document
  const opened = useRef(first)
  const way = useReadersWay()

  useEffect(() => {
    const units = opened.current?.units
    if (units) return onFirstFocus(() => readyHere({ document: typed.current, units, way }))
  }, [way])

  useEffect(() => {
    if (seen.current === document) return
    // From here on the picture may be a draft's: what was told before has to be told again if it comes back.
    seen.current = null
    const control = new AbortController()
    const here = opened.current && { document, units: opened.current.units, way }
    if (here)
      void draftHere(here, shapeOnScreen(opened.current)).then((line) => {
        if (line && seen.current !== typed.current)
          setPreview((last) => last && { ...last, heatLine: { ...line, tables: last.heatLine.tables } })
      })
    const timer = setTimeout(async () => {
      setWorking(true)
      try {
        const told = here && (await previewHere(here))
        if (control.signal.aborted) return
        const answer = told ?? (await send<Preview>('/api/preview', 'POST', { document }, control.signal))
        seen.current = document
        setProblems(
          answer.ok ? [] : answer.problems.length > 0 ? answer.problems : [{ pointer: '', sentence: answer.sentence }],
        )
        if (answer.ok) setPreview(answer.value)
        setWorking(false)
      } catch {
        // Overtaken by newer typing; its own answer follows.
      }
    }, SETTLE_MS)
    return () => {
      clearTimeout(timer)
      control.abort()
    }
  }, [document, way])
  return { preview, problems, working }
}

/** Of the shapes that the page was opened with; a draft is drawn in the one that is seen. */
const shapeOnScreen = (opened: Preview | null) =>
  opened?.heatLine.shapes.find(({ media }) => window.matchMedia(media).matches)?.show

/** Somebody is about to type. */
function onFirstFocus(ready: () => void): () => void {
  const control = new AbortController()
  const { signal } = control
  const focused = ({ target }: FocusEvent) => {
    if (!(target instanceof HTMLInputElement || target instanceof HTMLSelectElement)) return
    control.abort()
    ready()
  }
  window.addEventListener('focusin', focused, { signal })
  return () => control.abort()
}
