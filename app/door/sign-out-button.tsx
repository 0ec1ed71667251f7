'use client'
import { useState } from 'react'
import { forgetDays } from '../set/feed/indexed-store'
import { send } from '../ui/send'
import { keptNotCleared, signOutOnThisDevice, stillSignedIn } from '../words/door'

/** Pages that were kept to be read without a network go with the sign-in; an insecure origin has none. */
async function forgetHere() {
  const names = 'caches' in window ? await caches.keys() : []
  await Promise.all([forgetDays(), ...names.map((name) => caches.delete(name))])
}

export function SignOutButton() {
  const [fault, setFault] = useState('')
  async function signOut() {
    const answer = await send('/api/door/sign-out', 'POST', {})
    if (!answer.ok) return setFault(stillSignedIn)
    await forgetHere().catch((fault) => console.warn(keptNotCleared, fault))
    window.location.assign('/door')
  }
  return (
    <>
      <button type="button" className="btn" onClick={signOut}>
        {signOutOnThisDevice}
      </button>
      <p role="alert">{fault}</p>
    </>
  )
}
