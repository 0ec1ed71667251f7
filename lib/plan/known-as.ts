import type { ErasurePlan } from './erase-person'
import { freeId, isNeutral } from './neutral-id'
import { isCalled, wordsOf } from './person-words'
import type { ShootDocument } from './shoot'
import { listAt } from './sketch'

interface Person {
  readonly id?: unknown
  readonly name?: unknown
  readonly roles?: unknown
}
/** Everything by which one person stands in the versions of a shoot. */
export interface KnownAs {
  readonly ids: readonly string[]
  readonly names: readonly string[]
  readonly phones: readonly string[]
  readonly roles: readonly string[]
}

const peopleIn = (document: ShootDocument) => listAt<Person>(document, '/people')
const idOf = ({ id }: Person) => (typeof id === 'string' ? id : '')
const nameOf = ({ name }: Person) => (typeof name === 'string' ? name.trim() : '')
const sameName = (a: string, b: string) => wordsOf(a).join(' ') === wordsOf(b).join(' ')

/** Who stands under these ids, over all versions: by the names they had, and by other ids that had one of these names. */
export function knownAs(documents: readonly ShootDocument[], wanted: readonly string[]): KnownAs {
  const people = documents.flatMap(peopleIn)
  const newest = new Set(peopleIn(documents.at(-1) ?? {}).map(idOf))
  const ids = new Set(wanted)
  const names = new Set<string>()
  for (let before = -1; before < ids.size + names.size; ) {
    before = ids.size + names.size
    for (const person of people) {
      const [own, name] = [idOf(person), nameOf(person)]
      const isNamed = name !== '' && wordsOf(name).length > 1 && [...names].some((one) => sameName(one, name))
      // Saved while it was being typed.
      const isHalf = own.length > 1 && !newest.has(own) && [...ids].some((one) => one !== own && one.startsWith(own))
      if (!ids.has(own) && !isNamed && !isHalf) continue
      if (own !== '') ids.add(own)
      if (name !== '') names.add(name)
    }
  }
  const own = people.filter((person) => ids.has(idOf(person)))
  const roles = own.flatMap((person) => (Array.isArray(person.roles) ? person.roles.map(String) : []))
  return {
    ids: [...ids],
    names: [...names],
    phones: [...new Set(documents.flatMap((document) => phonesOf(document, [...names])))],
    roles: [...new Set(roles)],
  }
}

interface Contact {
  readonly name?: unknown
  readonly phone?: unknown
}
const phonesOf = (document: ShootDocument, names: readonly string[]) =>
  listAt<Contact>(document, '/callSheet/contacts').flatMap(({ name, phone }) =>
    typeof phone === 'string' && isCalled(String(name ?? ''), names) ? [phone] : [],
  )

/** Everybody of these versions who ever had exactly this name or, in their contact, this number. */
export function idsNamed(documents: readonly ShootDocument[], wanted: { name?: string; phone?: string }): string[] {
  const people = documents.flatMap(peopleIn)
  const named = people.filter((person) => wanted.name !== undefined && sameName(nameOf(person), wanted.name))
  const digits = wanted.phone?.replace(/\D/g, '')
  const called = documents
    .flatMap((document) => listAt<Contact>(document, '/callSheet/contacts'))
    .filter(({ phone }) => digits && typeof phone === 'string' && phone.replace(/\D/g, '') === digits)
    .map(({ name }) => String(name ?? ''))
  const reached = people.filter(
    (person) => nameOf(person) !== '' && called.some((name) => isCalled(name, [nameOf(person)])),
  )
  return [...new Set([...named, ...reached].map(idOf))].filter((id) => id !== '')
}

/** What else names people in a shoot, beside its versions. */
export interface AlsoNamed {
  /** In its log, under what somebody chose or wrote. */
  readonly persons: readonly string[]
  /** Phones, probes and keys. */
  readonly devices: readonly string[]
}

/** How this person is taken out: which ids and device names tell who they are, and what stands in their place. */
export function erasurePlan(
  documents: readonly ShootDocument[],
  { ids, names, phones, roles }: KnownAs,
  also: AlsoNamed,
  notes: boolean,
): ErasurePlan {
  const inShoot = documents.flatMap(peopleIn)
  const taken = new Set([...inShoot.map(idOf), ...also.persons, ...inShoot.flatMap(({ roles: all }) => rolesIn(all))])
  // Somebody wrote a name where an id was asked for.
  const written = also.persons.filter((one) => !inShoot.some((person) => idOf(person) === one) && isCalled(one, names))
  const own = [...new Set([...ids, ...written])]
  const renamed = new Map<string, string>()
  for (const id of own) {
    if (ids.includes(id) && isNeutral(id, roles, names)) continue
    const free = freeId(taken)
    taken.add(free)
    renamed.set(id, free)
  }
  const telling = [...wholeNames(names), ...renamed.keys()]
  return {
    ids: Object.fromEntries(renamed),
    own: [...own, ...renamed.values()],
    devices: newDevices(also.devices, telling),
    names: [...names, ...renamed.keys()],
    telling,
    phones,
    notes,
  }
}

const rolesIn = (roles: unknown) => (Array.isArray(roles) ? roles.map(String) : [])
/** Without those that were saved half typed. */
const wholeNames = (names: readonly string[]) =>
  names.filter((name) => !names.some((other) => other !== name && other.toLowerCase().startsWith(name.toLowerCase())))

const LEAST_TELLING = 3
function newDevices(devices: readonly string[], telling: readonly string[]): Record<string, string> {
  const words = telling.flatMap(wordsOf).filter((word) => word.length >= LEAST_TELLING && !/^\d+$/.test(word))
  // "marias-phone" too.
  const named = devices.filter((device) => wordsOf(device).some((one) => words.some((word) => one.startsWith(word))))
  let n = 0
  const free = () => {
    do n++
    while (devices.includes(`device-${n}`))
    return `device-${n}`
  }
  return Object.fromEntries(named.map((device) => [device, free()]))
}
