'use client'
import { useState } from 'react'
import { send } from '../ui/send'
import { goOnOverTrustedLine, warningMeans } from '../words/trust'

/** Goes on over the trusted line, and takes along who is signed in. */
export function GoOnTrusted({ origin, carries }: { origin: string; carries: boolean }) {
  const [sentence, setSentence] = useState<string>()
  async function goOn() {
    if (!carries) return window.location.assign(`${origin}/door`)
    const answer = await send<{ code: string | null }>('/api/door/carry', 'POST', {})
    if (answer.ok) window.location.assign(answer.value.code ? `${origin}/join#${answer.value.code}` : `${origin}/door`)
    else setSentence(answer.sentence)
  }
  return (
    <>
      <button type="button" className="btn" onClick={goOn}>
        {goOnOverTrustedLine}
      </button>
      <span className="small mt-1 block">{warningMeans(origin)}</span>
      <span role="status">{sentence && <span className="says">{sentence}</span>}</span>
    </>
  )
}
