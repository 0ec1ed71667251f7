'use client'
import { type MouseEvent, type ReactNode, useState } from 'react'
import { isSaved, openInTab } from '../words/working'
import { fetchFile, saveFile } from './fetch-file'
import { Working } from './working'

type Said = { readonly name: string; readonly href: string } | { readonly fault: string } | null
/** A new tab, or a file besides, is the browser's own. */
const isOwn = (event: MouseEvent) => event.metaKey || event.ctrlKey || event.shiftKey || event.altKey
const pdfOf = (target: EventTarget) => {
  const link = target instanceof Element ? target.closest('a') : null
  return link?.pathname.endsWith('.pdf') && link.target === '' ? link.href : null
}

/** Links to files that are printed when they are asked for: what is being done, and why not where it cannot be, stands here. */
export function MadeFiles({ what, children }: { what: string; children: ReactNode }) {
  const [making, setMaking] = useState(false)
  const [said, setSaid] = useState<Said>(null)
  async function take(event: MouseEvent) {
    const href = pdfOf(event.target)
    if (!href || isOwn(event)) return
    event.preventDefault()
    if (making) return
    setMaking(true)
    setSaid(null)
    const answer = await fetchFile(href)
    setMaking(false)
    if (!answer.ok) return setSaid({ fault: answer.sentence })
    saveFile(answer.value)
    setSaid({ name: answer.value.name, href })
  }
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the links in it are pressed, by hand or by key; here they are heard
    // biome-ignore lint/a11y/useKeyWithClickEvents: the same
    <div className="made-files no-print" onClick={take}>
      {children}
      {!said && <Working what={making ? what : null} />}
      {said && (
        <p role="status">{'fault' in said ? <span className="says">{said.fault}</span> : <Saved {...said} />}</p>
      )}
    </div>
  )
}

const Saved = ({ name, href }: { name: string; href: string }) => (
  <span className="small">
    {isSaved(name)}{' '}
    <a className="textlink" href={href} target="_blank" rel="noreferrer">
      {openInTab}
    </a>
  </span>
)
