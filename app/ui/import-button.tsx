'use client'
import { useRouter } from 'next/navigation'
import { type ChangeEvent, useState } from 'react'
import { send } from './send'

const MOST_BYTES = 1_000_000

/** Takes a shoot file from disk. A fault is told with its place in the file; nothing is changed then. */
export function ImportButton() {
  const router = useRouter()
  const [faults, setFaults] = useState<readonly string[]>([])
  async function take(event: ChangeEvent<HTMLInputElement>) {
    const file = event.target.files?.[0]
    event.target.value = ''
    if (!file) return
    if (file.size > MOST_BYTES)
      return setFaults([
        `${file.name} is ${(file.size / 1e6).toFixed(1)} MB. A shoot file has at most 1 MB: is it the right file?`,
      ])
    let document: unknown
    try {
      document = JSON.parse(await file.text())
    } catch (fault) {
      const where = fault instanceof Error ? ` (${fault.message})` : ''
      return setFaults([
        `${file.name} is not whole JSON${where}. Export the shoot again, or mend the file at that place.`,
      ])
    }
    const answer = await send<{ id: string }>('/api/shoots', 'POST', { document })
    if (answer.ok) return router.push(`/shoots/${answer.value.id}/plan`)
    setFaults(
      answer.problems.length > 0
        ? answer.problems.map((p) => `${p.pointer || 'The file'}: ${p.sentence}`)
        : [answer.sentence],
    )
  }
  return (
    <span>
      <label className="btn quiet cursor-pointer">
        Open a shoot file
        <input className="sr-only" type="file" accept="application/json,.json" onChange={take} />
      </label>
      <span role="status">
        {faults.slice(0, 5).map((fault) => (
          <span className="says" key={fault}>
            {fault}
          </span>
        ))}
        {faults.length > 5 && <span className="says">And {faults.length - 5} more.</span>}
      </span>
    </span>
  )
}
