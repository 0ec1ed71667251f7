'use client'
import { send } from '../ui/send'

export function SignOutButton() {
  async function signOut() {
    await send('/api/door/sign-out', 'POST', {})
    window.location.assign('/door')
  }
  return (
    <button type="button" className="btn" onClick={signOut}>
      Sign out on this device
    </button>
  )
}
