'use client'
import { type ReactNode, useId } from 'react'
import { backWords } from '../words/set'
import { useOverBoard } from './use-over-board'

/** A page that lies over the board until its one thing is done. Escape goes back. */
export function Sheet({ title, close, children }: { title: string; close: () => void; children: ReactNode }) {
  const id = useId()
  const box = useOverBoard('sheet', close)
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
