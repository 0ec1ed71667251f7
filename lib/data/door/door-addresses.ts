import 'server-only'
import { behindProxy, givenNames, plainPort, tlsPort } from '../env'
import { isAddress, isPrivateAddress, lanAddresses, lanNames } from './lan-names.mjs'

export interface DoorAddress {
  readonly origin: string
  readonly trusted: boolean
}
const IS_LOOPBACK = /^(127\.|localhost|\[::1\])/

/** Where a phone can open the set, the likeliest first; `host` and `secure` are those of the request that asks. */
export function doorAddresses(host: string, secure: boolean): readonly DoorAddress[] {
  const own = { origin: `${secure ? 'https' : 'http'}://${host}`, trusted: secure }
  if (behindProxy()) return [own]
  const names = [...lanAddresses(), ...lanNames(givenNames()).filter((name) => name.includes('.'))]
  const lines = [
    { scheme: 'http', port: plainPort(), trusted: false },
    { scheme: 'https', port: tlsPort(), trusted: true },
  ]
  const all = lines.flatMap(({ scheme, port, trusted }) =>
    names
      .filter((name) => port !== null && !(trusted && isAddress(name) && !isPrivateAddress(name)))
      .map((name) => ({ origin: `${scheme}://${name}:${port}`, trusted })),
  )
  return IS_LOOPBACK.test(host) ? all : [own, ...all.filter(({ origin }) => origin !== own.origin)]
}
