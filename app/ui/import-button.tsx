'use client'
import { useRouter } from 'next/navigation'
import { type ChangeEvent, useState } from 'react'
import { andMore, ofArchiveIsHere, openShootFileOrArchive, takeItInAsCopy } from '../words/shared'
import { type Answer, send } from './send'
import { sendArchive, takeArchive } from './send-archive'

const MOST_BYTES = 1_000_000

interface Said {
  readonly faults: readonly string[]
  /** An archive whose shoot is here already: it may stand beside it. */
  readonly upload?: string
}

const faultsOf = (answer: Extract<Answer, { ok: false }>) =>
  answer.problems.length > 0
    ? answer.problems.map((p) => `${p.pointer || 'The file'}: ${p.sentence}`)
    : [answer.sentence]

/** The document in a shoot file, or why there is none. */
async function documentIn(file: File): Promise<{ document: unknown } | { fault: string }> {
  if (file.size > MOST_BYTES)
    return {
      fault: `${file.name} is ${(file.size / 1e6).toFixed(1)} MB. A shoot file has at most 1 MB: is it the right file?`,
    }
  try {
    return { document: JSON.parse(await file.text()) }
  } catch (fault) {
    const where = fault instanceof Error ? ` (${fault.message})` : ''
    return { fault: `${file.name} is not whole JSON${where}. Export the shoot again, or mend the file at that place.` }
  }
}

/** Takes a shoot file or an archive from disk. A fault is told with its place in the file; nothing is changed then. */
export function ImportButton() {
  const router = useRouter()
  const [{ faults, upload }, setSaid] = useState<Said>({ faults: [] })
  const [share, setShare] = useState<number | null>(null)
  const openShoot = (answer: Answer<{ id: string }>, page: 'plan' | 'wrap', upload?: string) => {
    if (answer.ok) return router.push(`/shoots/${answer.value.id}/${page}`)
    setSaid({ faults: faultsOf(answer), ...(answer.code === 'already-here' ? { upload } : {}) })
  }
  async function takeFile(file: File) {
    const read = await documentIn(file)
    if ('fault' in read) return setSaid({ faults: [read.fault] })
    openShoot(await send<{ id: string }>('/api/shoots', 'POST', { document: read.document }), 'plan')
  }
  async function takeZip(file: File) {
    setShare(0)
    const sent = await sendArchive(file, setShare)
    if (sent.ok) openShoot(await takeArchive(sent.value, false), 'wrap', sent.value)
    else setSaid({ faults: [sent.sentence] })
    setShare(null)
  }
  function take(event: ChangeEvent<HTMLInputElement>) {
    const file = event.target.files?.[0]
    event.target.value = ''
    setSaid({ faults: [] })
    if (file) void (/\.zip$/i.test(file.name) ? takeZip(file) : takeFile(file))
  }
  return (
    <span>
      <label className="btn quiet cursor-pointer">
        {openShootFileOrArchive}
        <input className="sr-only" type="file" accept="application/json,.json,application/zip,.zip" onChange={take} />
      </label>
      <span role="status">
        {share !== null && <span className="small block">{ofArchiveIsHere(Math.round(share * 100))}</span>}
        {faults.slice(0, 5).map((fault) => (
          <span className="says" key={fault}>
            {fault}
          </span>
        ))}
        {faults.length > 5 && <span className="says">{andMore(faults.length - 5)}</span>}
      </span>
      {upload && (
        <button
          type="button"
          className="textlink small"
          onClick={async () => openShoot(await takeArchive(upload, true), 'wrap')}
        >
          {takeItInAsCopy}
        </button>
      )}
    </span>
  )
}
