import 'server-only'
import { z } from 'zod'
import { SmallFile } from '../small-file'
import { hashOf, newSecret } from './secret'

/** Long enough to change the line, too short to be passed on. */
const GOOD_MS = 120_000

const CARRIED = z.object({ hash: z.string(), owner: z.boolean(), links: z.array(z.string()), until: z.number() })
type Carried = z.output<typeof CARRIED>
/** A file, for the other line may lead to another process. */
const file = new SmallFile<readonly Carried[]>('door/carried.json', z.array(CARRIED), [])

/** A code for once, by which a browser that is in over the plain line comes in over the trusted one too. */
export async function carryCode(
  { owner, links }: { readonly owner: boolean; readonly links: readonly string[] },
  now = Date.now(),
): Promise<string> {
  const code = newSecret()
  const carried = { hash: hashOf(code), owner, links: [...links], until: now + GOOD_MS }
  await file.change((all) => [...all.filter(({ until }) => now < until), carried])
  return code
}

export async function takeCarried(code: unknown, now = Date.now()): Promise<Carried | undefined> {
  if (typeof code !== 'string') return undefined
  const hash = hashOf(code)
  if (!(await file.read()).some((one) => one.hash === hash)) return undefined
  let taken: Carried | undefined
  await file.change((all) => {
    taken = all.find((one) => one.hash === hash && now < one.until)
    return all.filter((one) => one.hash !== hash)
  })
  return taken
}

/** A new passphrase ends what the old one opened, codes under way too. */
export async function forgetOwnersCodes(): Promise<void> {
  await file.change((all) => (all.some(({ owner }) => owner) ? all.filter(({ owner }) => !owner) : all))
}
