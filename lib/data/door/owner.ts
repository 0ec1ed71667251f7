import 'server-only'
import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto'
import { z } from 'zod'
import { BorderError } from '../border-error'
import { SmallFile } from '../small-file'

/** One of the settings that OWASP's Password Storage Cheat Sheet lists for scrypt: N = 2^15, r = 8, p = 3 (32 MiB). */
const COST = { N: 2 ** 15, r: 8, p: 3 }
const MEMORY = 64 * 2 ** 20
const HASH_BYTES = 32
export const SHORTEST = 12
const LONGEST = 200

const OWNER = z.object({
  salt: z.string(),
  hash: z.string(),
  cost: z.object({ N: z.number(), r: z.number(), p: z.number() }),
  chosen: z.number(),
})
type Owner = z.output<typeof OWNER>
const file = new SmallFile<Owner | null>('door/owner.json', OWNER.nullable(), null)

/** The same letters whichever keyboard composed them. */
const spelled = (passphrase: string) => passphrase.normalize('NFKC')
const stretched = (passphrase: string, salt: Buffer, cost: Owner['cost']) =>
  new Promise<Buffer>((resolve, reject) =>
    scrypt(spelled(passphrase), salt, HASH_BYTES, { ...cost, maxmem: MEMORY }, (fault, key) =>
      fault ? reject(fault) : resolve(key),
    ),
  )

export const ownerIsKnown = async () => (await file.read()) !== null

function requirePassphrase(passphrase: unknown): string {
  const length = typeof passphrase === 'string' ? [...spelled(passphrase)].length : 0
  if (typeof passphrase === 'string' && length >= SHORTEST && length <= LONGEST) return passphrase
  const sentence =
    length > LONGEST
      ? `This has ${length} characters. Choose at most ${LONGEST}.`
      : `Choose at least ${SHORTEST} characters; four or five words that you remember are good.`
  throw new BorderError('door-invalid', { problems: [{ pointer: '/passphrase', sentence }], sentence })
}

async function keepPassphrase(passphrase: unknown, may: (now: Owner | null) => boolean): Promise<void> {
  const wanted = requirePassphrase(passphrase)
  const salt = randomBytes(16)
  const hash = await stretched(wanted, salt, COST)
  const next = { salt: salt.toString('base64'), hash: hash.toString('base64'), cost: COST, chosen: Date.now() }
  await file.change((now) => {
    if (!may(now)) throw new BorderError('may-not', { sentence: 'A passphrase was chosen already. Sign in with it.' })
    return next
  })
}

/** Keeps the first passphrase; there may be none yet. */
export const chooseFirst = (passphrase: unknown) => keepPassphrase(passphrase, (now) => now === null)
/** Keeps the passphrase that a script gave. True where it is another than the one that was kept. */
export async function takeGiven(passphrase: string | undefined): Promise<boolean> {
  if (passphrase === undefined || (await isOwners(passphrase))) return false
  await chooseAnother(passphrase).catch((fault: Error) => {
    throw new Error(`EMBERSLATE_PASSPHRASE: ${fault.message}`)
  })
  return true
}
/** Keeps another passphrase in place of the first. */
export const chooseAnother = (passphrase: unknown) => keepPassphrase(passphrase, () => true)

export async function isOwners(passphrase: unknown): Promise<boolean> {
  const owner = await file.read()
  if (!owner || typeof passphrase !== 'string' || passphrase.length > 4 * LONGEST) return false
  const hash = await stretched(passphrase, Buffer.from(owner.salt, 'base64'), owner.cost)
  return timingSafeEqual(hash, Buffer.from(owner.hash, 'base64'))
}
