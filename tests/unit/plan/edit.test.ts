import { describe, expect, test } from 'vitest'
import { addShot, removeAt, removeShot, setAt, shotsOf, valueAt } from '../../../lib/plan/edit'
import { lamb } from './shoots'

const ids = (document: Record<string, unknown>) => shotsOf(document).map(({ id }) => id)
const three = { shots: ['a', 'b', 'c'].map((id) => ({ id, title: id, after: id === 'c' ? ['b'] : undefined })) }

describe('setAt, removeAt, valueAt: JSON pointers into the document', () => {
  test('set: a new document, the old one untouched, untouched branches shared', () => {
    const before = lamb()
    const after = setAt(before, '/cooks/0/roast/mass', '4 kg')
    expect(valueAt(after, '/cooks/0/roast/mass')).toBe('4 kg')
    expect(before).toEqual(lamb())
    expect(after.shots).toBe(before.shots)
  })
  test('set makes objects on the way, and "-" appends', () => {
    expect(setAt({}, '/day/slice/at', '18:30')).toEqual({ day: { slice: { at: '18:30' } } })
    expect(setAt({ shots: [1] }, '/shots/-', 2)).toEqual({ shots: [1, 2] })
  })
  test('keys keep their order', () => expect(Object.keys(setAt({ a: 1, b: 2 }, '/a', 3))).toEqual(['a', 'b']))
  test('a slash and a tilde in a key', () => expect(setAt({}, '/a~1b~0c', 1)).toEqual({ 'a/b~c': 1 }))
  test('remove: keys and entries; where nothing stands nothing happens', () => {
    expect(removeAt({ a: { b: 1, c: 2 } }, '/a/b')).toEqual({ a: { c: 2 } })
    expect(removeAt({ a: [1, 2, 3] }, '/a/1')).toEqual({ a: [1, 3] })
    const same = { a: 1 }
    expect(removeAt(same, '/b/c')).toBe(same)
  })
  test('no place outside a list, and no way into a prototype', () => {
    expect(setAt({ a: [1] }, '/a/7', 2)).toEqual({ a: [1] })
    expect(setAt({ a: [1] }, '/a/x', 2)).toEqual({ a: [1] })
    setAt({}, '/__proto__/polluted', true)
    expect(({} as Record<string, unknown>).polluted).toBeUndefined()
    expect(valueAt({}, '/constructor/name')).toBeUndefined()
  })
})

describe('shots: added, taken out, moved', () => {
  test('an id that is taken gets a number', () => {
    const once = addShot(three, { id: 'a', title: 'again' })
    expect(ids(addShot(once, { id: 'a', title: 'and again' }))).toEqual(['a', 'b', 'c', 'a-2', 'a-3'])
  })
  test('a shot taken out leaves every "after"', () => {
    const left = removeShot(three, 'b')
    expect(ids(left)).toEqual(['a', 'c'])
    expect(valueAt(left, '/shots/1/after')).toBeUndefined()
  })
})
