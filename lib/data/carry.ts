import 'server-only'
import { hashOf, newSecret } from './secret'

/** Long enough to change the line, too short to be passed on. */
const GOOD_MS = 120_000

interface Carried {
  readonly owner: boolean
  readonly links: readonly string[]
  readonly until: number
}
const shared = globalThis as { emberslateCarried?: Map<string, Carried> }
const carried = () => {
  shared.emberslateCarried ??= new Map()
  return shared.emberslateCarried
}

/** A code for once, by which a browser that is in over the plain line comes in over the trusted one too. */
export function carryCode({ owner, links }: Pick<Carried, 'owner' | 'links'>, now = Date.now()): string {
  for (const [hash, { until }] of carried()) if (until < now) carried().delete(hash)
  const code = newSecret()
  carried().set(hashOf(code), { owner, links, until: now + GOOD_MS })
  return code
}

export function takeCarried(code: unknown, now = Date.now()): Carried | undefined {
  if (typeof code !== 'string') return undefined
  const found = carried().get(hashOf(code))
  carried().delete(hashOf(code))
  return found && now < found.until ? found : undefined
}

/** A new passphrase ends what the old one opened, codes under way too. */
export function forgetOwnersCodes(): void {
  for (const [hash, { owner }] of carried()) if (owner) carried().delete(hash)
}
