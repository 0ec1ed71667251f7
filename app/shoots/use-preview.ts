'use client'
import { useEffect, useRef, useState } from 'react'
import type { ShootDocument } from '@/lib/plan/shoot'
import type { Problem } from '@/lib/refusals'
import { useReadersWay } from '../ui/reader'
import { send } from '../ui/send'
import type { Preview } from './preview'
import { previewHere } from './preview-here'

const SETTLE_MS = 250

/** The forecast of what is typed, from this browser's own worker or else the server, a moment after the typing stops. While a field is wrong the last good picture stays. */
export function usePreview(document: ShootDocument, first: Preview | null) {
  const [preview, setPreview] = useState<Preview | null>(first)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [working, setWorking] = useState(first === null)
  const seen = useRef(first ? document : null)
  const units = useRef(first?.units)
  const way = useReadersWay()
  useEffect(() => {
    if (seen.current === document) return
    const control = new AbortController()
    const timer = setTimeout(async () => {
      setWorking(true)
      try {
        const here = await previewHere(document, units.current, way)
        if (control.signal.aborted) return
        const answer = here ?? (await send<Preview>('/api/preview', 'POST', { document }, control.signal))
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
