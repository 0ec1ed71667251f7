import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { hasShape } from '../../../lib/plan/document-shape'

const full = () => JSON.parse(readFileSync('tests/fixtures/shoots/full.json', 'utf8'))

describe('a document kept from before', () => {
  it('is shown with whatever a person typed into its fields', () => {
    expect(hasShape(full())).toBe(true)
    const typed = full()
    typed.cooks[0].roast.mass = 'x'
    typed.shots[0].needs = 5
    typed.place.lat = 'north'
    expect(hasShape(typed)).toBe(true)
  })

  it.each([
    ['no document', () => null],
    ['a list', () => []],
    ['another version', () => ({ ...full(), emberslate: 2 })],
    ['no cooks', () => ({ ...full(), cooks: [] })],
    ['cooks that are words', () => ({ ...full(), cooks: 'x' })],
    ['stages that are words', () => ({ ...full(), cooks: [{ ...full().cooks[0], stages: 'none' }] })],
    ['a stage that is nothing', () => ({ ...full(), cooks: [{ ...full().cooks[0], stages: [null] }] })],
    ['a shot that is nothing', () => ({ ...full(), shots: [null] })],
    ['a person without a name', () => ({ ...full(), people: [{}] })],
    ['contacts that are words', () => ({ ...full(), callSheet: { contacts: 'x' } })],
    ['a step of the card that is nothing', () => ({ ...full(), card: { steps: [null] } })],
    [
      'an override of the older form',
      () => ({ ...full(), card: { steps: [{ id: 'a', text: 'b', override: 'As filmed.' }] } }),
    ],
  ])('is put by when the forms could not show it: %s', (_, make) => {
    expect(hasShape(make())).toBe(false)
  })
})
