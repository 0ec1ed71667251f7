'use client'
import { type KeyboardEvent, type ReactNode, useId, useState } from 'react'
import type { TermName } from '../words/glossary'
import { noMeaningHere } from '../words/shared'

interface TermProps {
  readonly of: TermName
  /** The word as the sentence needs it, where that is not the entry's own. */
  readonly children?: ReactNode
}

/** Floated over the whole width: the line is finished first, then the note stands beneath it. */
const NOTE =
  'float-left my-1 w-full border-l-4 border-edge py-1 pl-3 text-left font-sans text-sm font-normal whitespace-normal text-ink-2'

/** A word of the glossary. A press opens its sentence under the line; the glossary itself is fetched by the first press. */
export function Term({ of, children = of }: TermProps) {
  const id = useId()
  const [says, setSays] = useState<string | null>(null)
  async function toggle() {
    if (says !== null) return setSays(null)
    try {
      const { meaningOf } = await import('../words/glossary')
      setSays(meaningOf(of))
    } catch {
      setSays(noMeaningHere)
    }
  }
  const closeByKey = (event: KeyboardEvent) => {
    if (event.key !== 'Escape' || says === null) return
    event.stopPropagation()
    setSays(null)
  }
  return (
    <>
      <button
        type="button"
        className="term cursor-help underline decoration-dotted underline-offset-4 print:no-underline"
        aria-expanded={says !== null}
        aria-controls={says === null ? undefined : id}
        onClick={toggle}
        onKeyDown={closeByKey}
      >
        {children}
      </button>
      <span id={id} role="status" className={says === null ? '' : NOTE}>
        {says}
      </span>
    </>
  )
}
