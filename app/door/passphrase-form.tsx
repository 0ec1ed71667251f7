'use client'
import { type FormEvent, useId, useState } from 'react'
import { send } from '../ui/send'
import { hide, show } from '../words/door'

interface Secret {
  readonly name: string
  readonly label: string
  readonly why?: string
  readonly complete: 'current-password' | 'new-password'
}

/** Asks for a passphrase (or the former and a new one) and goes on where it was right. */
export function PassphraseForm(props: { path: string; secrets: readonly Secret[]; button: string; to: string }) {
  const [fault, setFault] = useState<{ name: string; sentence: string }>()
  const [busy, setBusy] = useState(false)
  async function submit(event: FormEvent<HTMLFormElement>) {
    event.preventDefault()
    setBusy(true)
    const typed = Object.fromEntries(new FormData(event.currentTarget)) as Record<string, string>
    const answer = await send(props.path, 'POST', typed)
    // The whole page anew: what was drawn for nobody must not stay.
    if (answer.ok) return window.location.assign(props.to)
    setBusy(false)
    const pointer = answer.problems[0]?.pointer.slice(1)
    const name = props.secrets.find((one) => one.name === pointer)?.name ?? props.secrets.at(-1)?.name ?? ''
    setFault({ name, sentence: answer.problems[0]?.sentence ?? answer.sentence })
  }
  return (
    <form onSubmit={submit} className="max-w-md">
      {props.secrets.map((secret) => (
        <SecretField
          key={secret.name}
          secret={secret}
          fault={fault?.name === secret.name ? fault.sentence : undefined}
        />
      ))}
      <button type="submit" className="btn main mt-2" disabled={busy}>
        {props.button}
      </button>
    </form>
  )
}

function SecretField({ secret, fault }: { secret: Secret; fault?: string }) {
  const id = useId()
  const [shown, setShown] = useState(false)
  const described = [secret.why && `${id}-why`, fault && `${id}-fault`].filter(Boolean).join(' ') || undefined
  return (
    <div className={fault ? 'field wrong' : 'field'}>
      <label htmlFor={id}>{secret.label}</label>
      <span className="flex items-end gap-3">
        <input
          id={id}
          name={secret.name}
          type={shown ? 'text' : 'password'}
          autoComplete={secret.complete}
          aria-invalid={fault ? true : undefined}
          aria-describedby={described}
          required
        />
        <button
          type="button"
          className="textlink min-h-11! px-2!"
          aria-pressed={shown}
          onClick={() => setShown(!shown)}
        >
          {shown ? hide : show}
        </button>
      </span>
      {fault && (
        <span className="says" id={`${id}-fault`} role="alert">
          {fault}
        </span>
      )}
      {secret.why && (
        <span className="why" id={`${id}-why`}>
          {secret.why}
        </span>
      )}
    </div>
  )
}
