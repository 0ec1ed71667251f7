import 'server-only'
import { z } from 'zod'
import { DEVICE } from '../../log/entry-words'
import { BorderError } from '../border-error'
import { sayFault } from '../say'
import { SmallFile } from '../small-file'
import { LastSeen } from './last-seen'
import { FORGOTTEN_MS } from './links'
import { hashOf, newRowId, newSecret, SECRET } from './secret'

const KEY = z.object({
  id: z.string(),
  shoot: z.string(),
  name: z.string(),
  hash: z.string(),
  made: z.number(),
  expires: z.number(),
  seen: z.number().nullable(),
})
/** What lets one device send readings to one shoot. */
export type DeviceKey = z.output<typeof KEY>
const file = new SmallFile<readonly DeviceKey[]>('door/keys.json', z.array(KEY), [])
const lastSeen = new LastSeen('keys')

/** A key under a name of its own in its shoot; the secret is told once and not kept. */
export async function makeKey(shoot: string, name: unknown, expires: number) {
  const secret = newSecret()
  const id = newRowId()
  await file.change((keys) => {
    const sentence = nameFault(
      name,
      keys.filter((key) => key.shoot === shoot),
    )
    if (sentence) throw new BorderError('door-invalid', { problems: [{ pointer: '/name', sentence }], sentence })
    return [...keys, { id, shoot, name: name as string, hash: hashOf(secret), made: Date.now(), expires, seen: null }]
  })
  return { id, name: name as string, secret }
}

function nameFault(name: unknown, keys: readonly DeviceKey[]): string | undefined {
  if (typeof name !== 'string' || !DEVICE.test(name))
    return 'Name the device with letters, digits, hyphens and points, at most 60, such as "probe-1".'
  if (keys.some((key) => key.name === name))
    return `There is a key "${name}" already. Choose another name, or revoke it.`
  return undefined
}

export async function revokeKey(shoot: string, id: string): Promise<boolean> {
  let found = false
  await file.change((keys) => {
    const rest = keys.filter((key) => key.id !== id || key.shoot !== shoot)
    found = rest.length < keys.length
    return found ? rest : keys
  })
  return found
}

export const keysOf = async (shoot: string) =>
  (await file.read()).filter((key) => key.shoot === shoot).map((key) => ({ ...key, seen: seenOf(key) }))
const seenOf = ({ id, seen }: DeviceKey) => lastSeen.of(id, seen ?? 0) || null

/** The key that a request was sent with. */
export async function keyBySecret(secret: string): Promise<DeviceKey | undefined> {
  if (!SECRET.test(secret)) return undefined
  const hash = hashOf(secret)
  const now = Date.now()
  const key = (await file.read()).find((one) => one.hash === hash && now < one.expires)
  if (key) await noteSeen(key, now)
  return key
}

async function noteSeen({ id }: DeviceKey, now: number): Promise<void> {
  const all = lastSeen.note(id, now)
  const write = (one: DeviceKey) => ({ ...one, seen: Math.max(one.seen ?? 0, all?.get(one.id) ?? 0) || null })
  // A reading is not refused because this could not be written.
  if (all) await file.change((keys) => keys.map(write)).catch((fault) => sayFault('seen-not-kept', fault))
}

export const forgetKeys = (now = Date.now()) =>
  file.change((keys) => {
    const rest = keys.filter(({ expires }) => now - expires < FORGOTTEN_MS)
    return rest.length < keys.length ? rest : keys
  })
