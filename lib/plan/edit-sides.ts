import { removeAt, setAt, shotsOf } from './edit'
import type { ShootDocument } from './shoot'
import { listAt, peopleOf } from './sketch'

export type SideEntry = { readonly id: string; readonly title?: unknown; readonly [key: string]: unknown }
export const sidesOf = (document: ShootDocument): readonly SideEntry[] => listAt<SideEntry>(document, '/sides')

/** An hour beside the first roast, done by its first slice; what it is and how long it takes is then written. */
export function addSide(document: ShootDocument): ShootDocument {
  const sides = sidesOf(document)
  const taken = new Set([...sides, ...listAt<{ id: string }>(document, '/cooks')].map(({ id }) => id))
  let n = sides.length + 1
  while (taken.has(`side-${n}`)) n++
  const held = peopleOf(document).flatMap(({ roles }) => roles)
  const hands = held.includes('cook') || held.length === 0 ? {} : { needs: [held[0]] }
  const side = { id: `side-${n}`, title: 'New side', takes: '60 min', ready: 'first-slice', ...hands }
  return setAt(document, '/sides', [...sides, side])
}

/** Its shots stay, of the first roast and in no state: what they show is then to be written. */
export function removeSide(document: ShootDocument, index: number): ShootDocument {
  const id = sidesOf(document)[index]?.id
  const bare = shotsOf(document).reduce(
    (all, shot, i) => (shot.cook === id ? removeAt(removeAt(all, `/shots/${i}/cook`), `/shots/${i}/state`) : all),
    document,
  )
  return removeAt(bare, sidesOf(document).length === 1 ? '/sides' : `/sides/${index}`)
}
