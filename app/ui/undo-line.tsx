'use client'
import { useEffect, useId, useRef } from 'react'
import { putBack } from '../words/shared'

interface UndoLineProps {
  /** "Shot “Herbs” is taken out." Nothing where nothing was. */
  readonly said: string | null
  readonly undo: () => void
  /** Where something else was done than taking out. */
  readonly word?: string
  readonly waiting?: boolean
}

/** What was just taken out, at its place, and the one press that puts it back. */
export function UndoLine({ said, undo, word = putBack, waiting = false }: UndoLineProps) {
  const id = useId()
  const button = useRef<HTMLButtonElement>(null)
  // What was pressed may be gone with what it took out: the keyboard goes on from here, not from the top of the page.
  useEffect(() => {
    if (said && document.activeElement === document.body) button.current?.focus({ preventScroll: true })
  }, [said])
  return (
    <div role="status" className="undo-line">
      {said && (
        <p>
          <span id={id}>{said}</span>{' '}
          <button
            ref={button}
            type="button"
            className="textlink"
            aria-describedby={id}
            disabled={waiting}
            onClick={undo}
          >
            {word}
          </button>
        </p>
      )}
    </div>
  )
}

interface Taken {
  readonly last: { readonly words: string; readonly at: string } | null
  readonly undo: () => void
}
/** The line where it belongs: only at the place in the document that something was taken out of. */
export const UndoAt = ({ taken: { last, undo }, at }: { taken: Taken; at: string }) =>
  last?.at === at ? <UndoLine said={last.words} undo={undo} /> : null
