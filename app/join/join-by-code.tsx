'use client'
import { useCallback, useEffect, useRef, useState } from 'react'
import { type Answer, send } from '../ui/send'
import { codeIsBeingChecked, openingSet, setDidNotOpen, tryAgain } from '../words/door'

/** Takes the code out of the address, trades it for a session and goes to the set. */
export function JoinByCode() {
  const [refused, setRefused] = useState<Extract<Answer, { ok: false }>>()
  const code = useRef<string>(null)
  const join = useCallback(async () => {
    const answer = await send<{ to: string }>('/api/door/join', 'POST', { code: code.current })
    if (answer.ok) window.location.replace(answer.value.to)
    else setRefused(answer)
  }, [])
  useEffect(() => {
    if (code.current !== null) return
    code.current = window.location.hash.slice(1)
    window.history.replaceState(null, '', '/join')
    void join()
  }, [join])
  return (
    <>
      <h1>{refused ? setDidNotOpen : openingSet}</h1>
      <p className="lead mt-4" role="status">
        {refused?.sentence ?? codeIsBeingChecked}
      </p>
      {refused && refused.code !== 'wrong-code' && (
        <button type="button" className="btn main mt-4" onClick={join}>
          {tryAgain}
        </button>
      )}
    </>
  )
}
