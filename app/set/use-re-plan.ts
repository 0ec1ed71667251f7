'use client'
import { useCallback, useEffect, useRef, useState } from 'react'
import { rePlanBrokeOffDay } from '../words/desk'
import type { RePlanAnswer, RePlanAsked } from './re-plan-worker'

/** A re-plan in its own thread, begun with the first question; the last answer stays until the next. */
export function useRePlan() {
  const worker = useRef<Worker | null>(null)
  const [answer, setAnswer] = useState<RePlanAnswer | null>(null)
  const [working, setWorking] = useState(false)
  useEffect(() => () => worker.current?.terminate(), [])
  const ask = useCallback((asked: RePlanAsked) => {
    const running = worker.current ?? new Worker(new URL('./re-plan-worker.ts', import.meta.url), { type: 'module' })
    worker.current = running
    const done = (result: RePlanAnswer) => {
      setAnswer(result)
      setWorking(false)
    }
    running.onmessage = ({ data }: MessageEvent<RePlanAnswer>) => done(data)
    running.onerror = () => done({ ok: false, sentence: rePlanBrokeOffDay })
    setWorking(true)
    running.postMessage(asked)
  }, [])
  const forget = useCallback(() => setAnswer(null), [])
  return { answer, working, ask, forget }
}
