'use client'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { Field } from '../../../ui/field'
import { send } from '../../../ui/send'

interface KeyRow {
  readonly id: string
  readonly name: string
  readonly until: string
  readonly seen: string | null
}

/** Keys with which devices send readings to this shoot and do nothing else. */
export function KeysDesk({ shootId, keys }: { shootId: string; keys: readonly KeyRow[] }) {
  const router = useRouter()
  const [name, setName] = useState('')
  const [fault, setFault] = useState<string>()
  const [made, setMade] = useState<{ name: string; secret: string }>()
  const path = `/api/shoots/${shootId}/keys`
  async function make() {
    const answer = await send<{ name: string; secret: string }>(path, 'POST', { name })
    setFault(answer.ok ? undefined : answer.sentence)
    if (!answer.ok) return
    setMade(answer.value)
    setName('')
    router.refresh()
  }
  async function revoke(id: string) {
    const answer = await send(`${path}/${id}`, 'DELETE', {})
    setFault(answer.ok ? undefined : answer.sentence)
    router.refresh()
  }
  return (
    <section aria-label="Device keys" className="no-print mt-10 max-w-4xl">
      <h2>Device keys</h2>
      <p className="small mt-1">
        A thermometer or logger that can send over the network sends its readings with a key.
      </p>
      <div className="flex flex-wrap items-start gap-4">
        <div className="w-72">
          <Field label="Name of the device" value={name} onChange={setName} fault={fault} why="Such as probe-1." />
        </div>
        <button type="button" className="btn mt-9" onClick={make}>
          Make a key
        </button>
      </div>
      {made && <MadeKey shootId={shootId} {...made} />}
      <ul className="m-0 mt-4 list-none border-t-2 border-ink p-0">
        {keys.length === 0 && <li className="small py-3">None.</li>}
        {keys.map((key) => (
          <li key={key.id} className="flex flex-wrap items-center justify-between gap-4 border-b border-rule py-2">
            <span>
              <b>{key.name}</b>{' '}
              <span className="small">
                {key.seen === null ? 'not used yet' : `last used ${key.seen}`}; until {key.until}
              </span>
            </span>
            <button type="button" className="btn quiet" onClick={() => revoke(key.id)}>
              Revoke<span className="sr-only"> {key.name}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  )
}

const MadeKey = ({ shootId, name, secret }: { shootId: string; name: string; secret: string }) => (
  <div role="status" className="mt-2 border-l-4 border-ink pl-4">
    <p>
      The key of <b>{name}</b>, shown this once:
    </p>
    <code className="mt-1 block break-all bg-leaf p-3">{secret}</code>
    <p className="small mt-2">
      Send readings to <code>/api/shoots/{shootId}/log</code> with the header{' '}
      <code>Authorization: Bearer {secret}</code> and <code>{`"by": {"device": "${name}"}`}</code> in each entry;
      /api/openapi.json has the rest.
    </p>
  </div>
)
