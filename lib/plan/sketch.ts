import { valueAt } from './edit'
import type { CookSketch } from './moments'
import type { ShootDocument } from './shoot'

/** As much of a document still being written as forms go by; nothing where it is in pieces. */

export function listAt<T>(document: ShootDocument, pointer: string): readonly T[] {
  const list = valueAt(document, pointer)
  return Array.isArray(list) ? list.filter((entry) => typeof entry === 'object' && entry !== null) : []
}

export const peopleOf = (document: ShootDocument) =>
  listAt<{ id: string; roles: readonly string[] }>(document, '/people').filter(({ roles }) => Array.isArray(roles))

/** Shots that somebody did not want: they are not offered again. */
export const leftOf = (document: ShootDocument): readonly unknown[] => {
  const left = valueAt(document, '/coverage/left')
  return Array.isArray(left) ? left : []
}

export function sketchOf(cook: unknown): CookSketch | null {
  const [id, kind, stages] = ['/id', '/cooker/kind', '/stages'].map((pointer) => valueAt(cook, pointer))
  if (typeof id !== 'string' || typeof kind !== 'string' || !Array.isArray(stages)) return null
  const whole = stages.every((stage) => typeof valueAt(stage, '/do') === 'string')
  return whole ? { id, cooker: { kind }, stages } : null
}
