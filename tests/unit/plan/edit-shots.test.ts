import { describe, expect, test } from 'vitest'
import { shotsOf } from '../../../lib/plan/edit'
import { canPin, canSplit, duplicateShot, pinShot, splitShot } from '../../../lib/plan/edit-shots'
import { parseShoot } from '../../../lib/plan/parse'
import { lamb } from './shoots'

const shot = (document: Record<string, unknown>, id: string) => shotsOf(document).find((each) => each.id === id)
const ids = (document: Record<string, unknown>) => shotsOf(document).map(({ id }) => id)
const reads = (document: Record<string, unknown>) => expect(parseShoot(document)).toMatchObject({ ok: true })
const small = (more: object) => ({
  shots: [
    { id: 'a', title: 'A', ...more },
    { id: 'b', title: 'B', after: ['a'] },
  ],
})

describe('duplicateShot', () => {
  test('stands behind its first, under an id of its own, and still reads', () => {
    const twice = duplicateShot(lamb(), 'herbs')
    expect(ids(twice).indexOf('herbs-2')).toBe(ids(twice).indexOf('herbs') + 1)
    expect(shot(twice, 'herbs-2')?.title).toBe(`${shot(twice, 'herbs')?.title}, again`)
    reads(twice)
  })
  test('a pin is not copied: two shots cannot stand at one minute', () =>
    expect(shot(duplicateShot(small({ free: true, pin: '18:05' }), 'a'), 'a-2')?.pin).toBeUndefined())
  test('a title that is as long as may be stays printable', () => {
    const long = 'x'.repeat(120)
    expect(shot(duplicateShot(small({ title: long }), 'a'), 'a-2')?.title).toHaveLength(120)
  })
})

describe('splitShot', () => {
  test('the halves make up the whole, the second after the first, and followers after both', () => {
    const cut = splitShot(small({ free: true, roll: '7 min' }), 'a')
    expect(shot(cut, 'a')?.roll).toBe('4 min')
    expect(shot(cut, 'a-2')).toMatchObject({ roll: '3 min', after: ['a'], free: true })
    expect(shot(cut, 'b')?.after).toEqual(['a', 'a-2'])
  })
  test('at a moment, the moment stays with the first', () => {
    const cut = splitShot(lamb(), 'first-cut')
    expect(shot(cut, 'first-cut')?.at).toMatchObject({ moment: 'first-slice', after: '2 min' })
    expect(shot(cut, 'first-cut-2')).toMatchObject({ free: true, roll: '2 min' })
    reads(cut)
  })
  test('a locked-off shot, a short one and one whose length is unreadable are not cut', () => {
    expect(canSplit(shot(lamb(), 'wide'))).toBe(false)
    for (const roll of ['1 min', 'soon']) expect(canSplit({ id: 'a', free: true, roll })).toBe(false)
    const same = small({ free: true, roll: '1 min' })
    expect(splitShot(same, 'a')).toBe(same)
  })
})

describe('pinShot', () => {
  test('pinned to a minute and let go', () => {
    const pinned = pinShot(lamb(), 'herbs', '18:05')
    expect(shot(pinned, 'herbs')?.pin).toBe('18:05')
    reads(pinned)
    expect(pinShot(pinned, 'herbs', null)).toEqual(lamb())
  })
  test('not where the meat says when', () => {
    expect(canPin(shot(lamb(), 'first-cut'))).toBe(false)
    expect(canPin(shot(lamb(), 'wide'))).toBe(false)
    expect(canPin(shot(lamb(), 'herbs'))).toBe(true)
  })
})
