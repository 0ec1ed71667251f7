import 'server-only'
import { createHash, randomBytes } from 'node:crypto'
import { z } from 'zod'
import type { EntryDocument } from '../../log/entry'
import { eraseFromEntry } from '../../log/erase-from-log'
import type { Erasure, ErasurePlan } from '../../plan/erase-person'
import { phrasesOf } from '../../plan/person-words'
import { SmallFile } from '../small-file'

const RENAMED = z.record(z.string(), z.string())
const ERASED = z.object({
  shoot: z.string(),
  at: z.number(),
  salt: z.string(),
  /** By the hash of what went, what stands in its place. */
  ids: RENAMED,
  devices: RENAMED,
  words: z.array(z.string()),
  longest: z.number(),
  notes: z.boolean(),
})
type Kept = z.output<typeof ERASED>
/** A phone that was away that long has no link any more. */
const REMEMBERED_MS = 90 * 86_400_000
/** Whom an erasure took out, hashed: a phone that was away still sends lines that name them. */
const file = new SmallFile<readonly Kept[]>('door/erased.json', z.array(ERASED), [])

const hashed = (salt: string, text: string) => createHash('sha256').update(salt).update(text).digest('base64url')
const namesHashed = (salt: string, names: Readonly<Record<string, string>>) =>
  Object.fromEntries(Object.entries(names).map(([name, to]) => [hashed(salt, name), to]))

/** Kept once for each erasure, however often it is begun again. */
export async function rememberErased(shoot: string, at: number, plan: ErasurePlan): Promise<void> {
  const salt = randomBytes(16).toString('base64url')
  const phrases = phrasesOf(plan.telling)
  const one: Kept = {
    shoot,
    at,
    salt,
    ids: namesHashed(salt, plan.ids),
    devices: namesHashed(salt, plan.devices),
    words: phrases.map((words) => hashed(salt, words.join(' '))),
    longest: Math.max(0, ...phrases.map(({ length }) => length)),
    notes: plan.notes,
  }
  await file.change((all) => (all.some((other) => other.shoot === shoot && other.at === at) ? all : [...all, one]))
}

const erasureOf = ({ salt, ids, devices, words, longest, notes }: Kept): Erasure => {
  const known = new Set(words)
  return {
    ids: { get: (id) => ids[hashed(salt, id)] },
    devices: { get: (name) => devices[hashed(salt, name)] },
    own: new Set(),
    names: [],
    words: {
      longest,
      isName: (one) => known.has(hashed(salt, one.join(' '))),
      // So few numbers are possible that their hashes would tell them.
      isPhone: () => false,
    },
    notes,
  }
}

export const forgetErased = (now = Date.now()) =>
  file.change((all) => {
    const rest = all.filter(({ at }) => now - at < REMEMBERED_MS)
    return rest.length < all.length ? rest : all
  })

/** How a line of this shoot is kept now that somebody was taken out of it; as it is where nobody was. */
export async function withoutErased(shoot: string): Promise<<T extends EntryDocument>(document: T) => T> {
  const erasures = (await file.read()).filter((one) => one.shoot === shoot).map(erasureOf)
  return (document) => erasures.reduce((line, erasure) => eraseFromEntry(line, erasure).document, document)
}
