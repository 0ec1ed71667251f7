import type { ShootDocument } from './shoot'

/** Edits of the document as it was written. Each returns a new document that shares what it did not touch. */

const steps = (pointer: string) =>
  pointer
    .split('/')
    .slice(1)
    .map((step) => step.replaceAll('~1', '/').replaceAll('~0', '~'))
const isList = (value: unknown): value is readonly unknown[] => Array.isArray(value)
const isObject = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null
const ownValue = (holder: unknown, step: string): unknown =>
  isObject(holder) && Object.hasOwn(holder, step) ? holder[step] : undefined

/** What stands at a JSON pointer, or undefined. */
export const valueAt = (document: unknown, pointer: string): unknown => steps(pointer).reduce(ownValue, document)

type Change = (old: unknown) => unknown
const GONE = Symbol('removed')

function edited(holder: unknown, path: readonly string[], change: Change): unknown {
  const [step, ...rest] = path
  if (step === undefined) return change(holder)
  const value = edited(ownValue(holder, step), rest, change)
  if (isList(holder)) return editedList(holder, step, value)
  const members = Object.entries(isObject(holder) ? holder : {})
  if (value === GONE) return Object.fromEntries(members.filter(([key]) => key !== step))
  const known = members.some(([key]) => key === step)
  // fromEntries defines keys, so that even "__proto__" stays a plain key for the parser to refuse.
  return Object.fromEntries(
    known ? members.map(([key, old]) => [key, key === step ? value : old]) : [...members, [step, value]],
  )
}

/** "-" is the place after the last, as in RFC 6901. */
function editedList(list: readonly unknown[], step: string, value: unknown): unknown[] {
  const index = step === '-' ? list.length : Number(step)
  if (!Number.isInteger(index) || index < 0 || index > list.length) return [...list]
  return value === GONE
    ? list.filter((_, i) => i !== index)
    : [...list.slice(0, index), value, ...list.slice(index + 1)]
}

/** Sets the value at a JSON pointer; missing objects on the way are made. */
export const setAt = (document: ShootDocument, pointer: string, value: unknown): ShootDocument =>
  edited(document, steps(pointer), () => value) as ShootDocument

/** Takes out what stands at a JSON pointer; where nothing stands the document stays as it is. */
export const removeAt = (document: ShootDocument, pointer: string): ShootDocument =>
  valueAt(document, pointer) === undefined ? document : (edited(document, steps(pointer), () => GONE) as ShootDocument)

/** Several edits one after another; null takes out what stands at its place. */
export const withEdits = (
  document: ShootDocument,
  edits: readonly { readonly pointer: string; readonly value: unknown }[],
): ShootDocument =>
  edits.reduce((d, { pointer, value }) => (value === null ? removeAt(d, pointer) : setAt(d, pointer, value)), document)

type ShotDocument = { readonly id: string; readonly [key: string]: unknown }
export const shotsOf = (document: ShootDocument): readonly ShotDocument[] =>
  isList(document.shots)
    ? document.shots.filter((shot): shot is ShotDocument => isObject(shot) && typeof shot.id === 'string')
    : []

/** The first of "name", "name-2", "name-3" … that no shot has. */
export function freeShotId(document: ShootDocument, name: string): string {
  const taken = new Set(shotsOf(document).map(({ id }) => id))
  let id = name
  for (let n = 2; taken.has(id); n++) id = `${name}-${n}`
  return id
}

export const addShot = (document: ShootDocument, shot: ShotDocument): ShootDocument =>
  setAt(document, '/shots', [...shotsOf(document), { ...shot, id: freeShotId(document, shot.id) }])

/** Takes a shot out, and its name from every "after". */
export function removeShot(document: ShootDocument, id: string): ShootDocument {
  const left = shotsOf(document).filter((shot) => shot.id !== id)
  const freed = left.map((shot) => {
    if (!isList(shot.after) || !shot.after.includes(id)) return shot
    const after = shot.after.filter((each) => each !== id)
    const { after: _, ...rest } = shot
    return after.length > 0 ? { ...shot, after } : (rest as ShotDocument)
  })
  return setAt(document, '/shots', freed)
}
