import 'server-only'
import { forgetKeys } from './door/device-keys'
import { forgetLinks } from './door/links'
import { forgetSessions } from './door/sessions'
import { forgetErased } from './person/erased'
import { sayFault } from './say'

const DAY_MS = 86_400_000

/** What let somebody in and has ended long since goes from the files of the door. */
export async function forgetOld(now = Date.now()): Promise<void> {
  await forgetSessions(now)
  await forgetLinks(now)
  await forgetKeys(now)
  await forgetErased(now)
}

/** Now and once a day, for as long as the server runs. */
export function forgetDaily(): void {
  const forget = () => void forgetOld().catch((fault) => sayFault('not-forgotten', fault))
  forget()
  setInterval(forget, DAY_MS).unref()
}
