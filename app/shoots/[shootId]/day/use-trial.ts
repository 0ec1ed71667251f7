'use client'
import { useCallback, useEffect, useRef, useState } from 'react'
import type { ShootDocument } from '@/lib/plan/shoot'
import type { Problem } from '@/lib/refusals'
import type { UnitSystem } from '@/lib/units'
import type { FromWorker, ToWorker } from '../../../layout-worker'
import type { DayView } from './day-view'

/** What came of the document that is being tried out. */
export interface Trial {
  readonly document: ShootDocument
  readonly view: DayView | null
  readonly problems: readonly Problem[]
  /** A quick look; a careful one follows. */
  readonly rough: boolean
  /** From the change to the answer on the screen. */
  readonly tookMs: number
}

/** The engine in its own thread, with the samples it lays out from; null where this browser cannot. */
async function startWorker(shootId: string): Promise<Worker | null> {
  try {
    const answer = await fetch(`/api/shoots/${shootId}/samples`)
    if (!answer.ok) return null
    const samples = await answer.arrayBuffer()
    const worker = new Worker(new URL('../../../layout-worker.ts', import.meta.url), { type: 'module' })
    worker.postMessage({ samples } satisfies ToWorker, [samples])
    return worker
  } catch {
    return null
  }
}

/**
 * Lays the document out in this browser as it is typed. `document` is null while there is nothing to try. The last
 * answer stays until the next; without an answer the saved day simply stands until the server has laid out the new one.
 */
export function useTrial(
  shootId: string,
  document: ShootDocument | null,
  units: UnitSystem,
  hasty: boolean,
): { readonly trial: Trial | null; readonly warm: () => void } {
  const [trial, setTrial] = useState<Trial | null>(null)
  const worker = useRef<Promise<Worker | null> | null>(null)
  const turn = useRef(0)
  /** Fetched once somebody is about to edit, with hand or eye on the table: never with the page. */
  const warm = useCallback(() => {
    worker.current ??= startWorker(shootId)
    return worker.current
  }, [shootId])
  useEffect(
    () => () => {
      void worker.current?.then((running) => running?.terminate())
    },
    [],
  )
  useEffect(() => {
    const own = ++turn.current
    if (!document) return setTrial(null)
    const askedAt = performance.now()
    void warm().then((running) => {
      if (!running || own !== turn.current) return
      running.onmessage = ({ data }: MessageEvent<FromWorker>) => {
        if (data.turn !== turn.current) return
        const tookMs = performance.now() - askedAt
        if ('problems' in data)
          setTrial((last) => ({ document, view: last?.view ?? null, problems: data.problems, rough: false, tookMs }))
        else setTrial({ document, view: data.view, problems: [], rough: data.rough, tookMs })
      }
      running.postMessage({ turn: own, document, units, hasty } satisfies ToWorker)
    })
  }, [warm, document, units, hasty])
  return { trial, warm }
}
