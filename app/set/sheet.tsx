'use client'
import { type ReactNode, useEffect, useId, useRef } from 'react'
import { backWords } from '../words/set'

/** A page that lies over the board until its one thing is done. Escape goes back. */
export function Sheet({ title, close, children }: { title: string; close: () => void; children: ReactNode }) {
  const id = useId()
  const box = useRef<HTMLDivElement>(null)
  const back = useRef(close)
  back.current = close
  useEffect(() => {
    const before = document.activeElement
    box.current?.focus()
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return
      event.stopPropagation()
      back.current()
    }
    const here = box.current
    here?.addEventListener('keydown', onKey)
    return () => {
      here?.removeEventListener('keydown', onKey)
      if (before instanceof HTMLElement && before.isConnected) before.focus()
    }
  }, [])
  return (
    <div className="sheet" role="dialog" aria-modal="true" aria-labelledby={id} tabIndex={-1} ref={box}>
      <div className="sheet-head">
        <h2 id={id}>{title}</h2>
        <button type="button" className="back" onClick={close}>
          {backWords}
        </button>
      </div>
      {children}
    </div>
  )
}
