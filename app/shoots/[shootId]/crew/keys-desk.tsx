'use client'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { Field } from '../../../ui/field'
import { send } from '../../../ui/send'
import {
  and,
  apiShootsLog,
  authorizationBearer,
  byDevice,
  deviceKeys,
  deviceKeysWhy,
  deviceNameWhy,
  inEachEntryApiOpenapi,
  isRevoked,
  keyOf,
  lastUsed,
  makeKey,
  nameOfDevice,
  none,
  notUsedYet,
  revokeWords,
  sendReadings,
  shownThisOnce,
  untilWords,
  withHeader,
} from '../../../words/crew'

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
  const [said, setSaid] = useState('')
  const path = `/api/shoots/${shootId}/keys`
  async function make() {
    const answer = await send<{ name: string; secret: string }>(path, 'POST', { name })
    setFault(answer.ok ? undefined : answer.sentence)
    if (!answer.ok) return
    setMade(answer.value)
    setName('')
    router.refresh()
  }
  async function revoke({ id, name }: KeyRow) {
    const answer = await send(`${path}/${id}`, 'DELETE', {})
    setSaid(answer.ok ? isRevoked(name) : answer.sentence)
    router.refresh()
  }
  return (
    <section aria-label={deviceKeys} className="no-print mt-10 max-w-4xl">
      <h2>{deviceKeys}</h2>
      <p className="small mt-1">{deviceKeysWhy}</p>
      <div className="flex flex-wrap items-start gap-4">
        <div className="w-72">
          <Field label={nameOfDevice} value={name} onChange={setName} fault={fault} why={deviceNameWhy} />
        </div>
        <button type="button" className="btn mt-9" onClick={make}>
          {makeKey}
        </button>
      </div>
      {made && <MadeKey shootId={shootId} {...made} />}
      <p role="status">{said && <span className="says">{said}</span>}</p>
      <ul className="m-0 mt-4 list-none border-t-2 border-ink p-0">
        {keys.length === 0 && <li className="small py-3">{none}</li>}
        {keys.map((key) => (
          <li key={key.id} className="flex flex-wrap items-center justify-between gap-4 border-b border-rule py-2">
            <span>
              <b>{key.name}</b>{' '}
              <span className="small">
                {key.seen === null ? notUsedYet : lastUsed(key.seen)}
                {untilWords(key.until)}
              </span>
            </span>
            <button type="button" className="btn quiet" onClick={() => revoke(key)}>
              {revokeWords}
              <span className="sr-only"> {key.name}</span>
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
      {keyOf} <b>{name}</b>
      {shownThisOnce}
    </p>
    <code className="mt-1 block break-all bg-leaf p-3">{secret}</code>
    <p className="small mt-2">
      {sendReadings} <code>{apiShootsLog(shootId)}</code> {withHeader} <code>{authorizationBearer(secret)}</code> {and}{' '}
      <code>{byDevice(name)}</code> {inEachEntryApiOpenapi}
    </p>
  </div>
)
