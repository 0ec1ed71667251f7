import { describe, expect, it } from 'vitest'
import { layOutDay } from '../../../lib/day/lay-out'
import { type Erasure, eraseFromShoot, erasureOf } from '../../../lib/plan/erase-person'
import { shootJsonSchema } from '../../../lib/plan/json-schema'
import { erasurePlan, idsNamed, knownAs } from '../../../lib/plan/known-as'
import { isNeutral } from '../../../lib/plan/neutral-id'
import { parseShoot } from '../../../lib/plan/parse'
import { SHOOT_FIELDS } from '../../../lib/plan/person-fields'
import { isCalled, personWords, toldIn, withoutClauses } from '../../../lib/plan/person-words'
import type { ShootDocument } from '../../../lib/plan/shoot'
import { textPaths } from '../../../lib/plan/text-paths'
import { FOURTEEN, gardenShoot } from '../day/garden-shoot'
import { syntheticForecast } from '../day/synthetic-forecast'
import { lambWith } from './shoots'

const MARIA = {
  '/people': [
    { id: 'presenter', roles: ['presenter', 'cook'] },
    { id: 'maria', name: 'María Quillfeather', roles: ['camera'] },
    { id: 'cam-2', name: 'Maria Stone', roles: ['camera', 'sound'] },
    { id: 'stylist', roles: ['stylist'] },
    { id: 'host', roles: ['host'] },
  ],
  '/tasks/0/needs': ['maria'],
  '/callSheet': {
    contacts: [
      { name: 'Maria', phone: '+353 87 555 0199' },
      { name: 'Tom', phone: '+353 1 555 0100' },
    ],
    allergens: 'nuts (Maria), shellfish',
    notes: 'Maria Quillfeather has the keys; maria rings 087 555 0199 when she is in.',
  },
  '/risk': { responsible: 'Maria Quillfeather' },
  '/publish': { author: 'Tom Ash', page: 'https://example.com/maria-quillfeather/lamb' },
}
const document = lambWith(MARIA)
const erasureFor = (documents: readonly ShootDocument[], id: string, notes = false): Erasure =>
  erasureOf(erasurePlan(documents, knownAs(documents, [id]), { persons: [], devices: [] }, notes))
const at = (value: unknown, ...keys: (string | number)[]): unknown =>
  keys.reduce<unknown>((one, key) => (one as Record<string, unknown> | undefined)?.[key], value)

describe('one person taken out of a shoot', () => {
  it('has a decision for every text of the shoot file, and none for what it does not have', () => {
    expect(Object.keys(SHOOT_FIELDS).sort()).toEqual([...textPaths(shootJsonSchema()).keys()].sort())
  })

  it('loses name, contact, number, allergy and address; the id that tells who it was becomes a neutral one everywhere', () => {
    const { document: after } = eraseFromShoot(document, erasureFor([document], 'maria'))
    expect(at(after, 'people', 1)).toEqual({ id: 'crew-1', roles: ['camera'] })
    expect(at(after, 'tasks', 0, 'needs')).toEqual(['crew-1'])
    expect(after.callSheet).toEqual({
      contacts: [{ name: 'Tom', phone: '+353 1 555 0100' }],
      allergens: '[erased], shellfish',
      notes: '[erased] has the keys; maria rings [erased] when she is in.',
    })
    expect(after.risk).toEqual({})
    expect(after.publish).toEqual({ author: 'Tom Ash' })
    expect(parseShoot(after).ok).toBe(true)
  })

  it('leaves others who share a word of the name, and all else to the letter', () => {
    const { document: after } = eraseFromShoot(document, erasureFor([document], 'maria'))
    expect(at(after, 'people', 2)).toEqual({ id: 'cam-2', name: 'Maria Stone', roles: ['camera', 'sound'] })
    expect(JSON.stringify(after.shots)).toBe(JSON.stringify(document.shots))
    expect(Object.keys(after)).toEqual(Object.keys(document))
  })

  it('tells the single words that stay, and takes them on demand', () => {
    const shy = eraseFromShoot(document, erasureFor([document], 'maria'))
    expect(shy.left.map(({ pointer }) => pointer)).toEqual(['/callSheet/notes'])
    const whole = eraseFromShoot(document, erasureFor([document], 'maria', true))
    expect(at(whole.document, 'callSheet', 'notes')).toBe(
      '[erased] has the keys; [erased] rings [erased] when she is in.',
    )
    expect(whole.left).toEqual([])
  })

  it('done again changes nothing more', () => {
    const erasure = erasureFor([document], 'maria', true)
    const once = eraseFromShoot(document, erasure).document
    expect(eraseFromShoot(once, erasure)).toEqual({ document: once, changes: [], left: [] })
  })

  it('keeps a text within its length, and the shoot readable', () => {
    const long = lambWith({
      ...MARIA,
      '/title': `Maria Quillfeather ${'x'.repeat(101)}`,
      '/shots/0/title': `Jo ${'y'.repeat(116)} jo`,
    })
    const { document: after } = eraseFromShoot(long, erasureFor([long], 'maria', true))
    expect(parseShoot(after).ok).toBe(true)
  })

  it('follows the person through versions: other ids, names half typed, numbers of long ago', () => {
    const versions = [
      lambWith({ ...MARIA, '/people/1/id': 'ma', '/people/1/name': 'Mar' }),
      lambWith({ ...MARIA, '/people/1/id': 'camera-one', '/callSheet/contacts/0/phone': '0498 123 456' }),
      document,
    ]
    const known = knownAs(versions, ['maria'])
    expect([...known.ids].sort()).toEqual(['camera-one', 'ma', 'maria'])
    expect(known.names).toContain('Mar')
    expect(known.phones).toContain('0498 123 456')
    const erasure = erasureFor(versions, 'maria', true)
    const left = versions.map((one) => JSON.stringify(eraseFromShoot(one, erasure).document)).join()
    expect(left).not.toMatch(/quillfeather|"Mar"|0498|"ma"|"maria"/i)
    expect(idsNamed(versions, { name: 'maria quillfeather' })).toEqual(expect.arrayContaining(['maria', 'camera-one']))
    expect(idsNamed(versions, { phone: '0498123456' })).toContain('maria')
  })

  it('leaves the laid-out day as it was but for the id', () => {
    const shoot = gardenShoot({ shots: FOURTEEN.slice(0, 5) })
    const forecasts = new Map(shoot.cooks.map((c) => [c.id, syntheticForecast(c.id, { members: 32, seed: 1 })]))
    const laid = (one: typeof shoot) => JSON.stringify(layOutDay(one, forecasts, { seed: 1 }))
    // In the order of letters the neutral id comes after the other camera's.
    const renamed = JSON.parse(JSON.stringify(shoot).replaceAll('"cam-1"', '"crew-1"')) as typeof shoot
    expect(laid(shoot)).toContain('"cam-1"')
    expect(laid(renamed)).toBe(laid(shoot).replaceAll('"cam-1"', '"crew-1"'))
  })
})

describe('who is meant', () => {
  it.each([
    ['cam-1', ['camera'], ['María Quillfeather'], true],
    ['presenter', ['presenter', 'cook'], ['María Quillfeather'], true],
    ['crew-3', ['camera'], [], true],
    ['maria', ['camera'], ['María Quillfeather'], false],
    ['molly', ['camera'], [], false],
    ['cam-1', ['camera'], ['Cameron Ash'], false],
    ['cook', ['cook'], ['Ann Cook'], false],
  ])('the id %s of %j, called %j, is neutral: %s', (id, roles, names, neutral) => {
    expect(isNeutral(id, roles, names)).toBe(neutral)
  })

  it('a name is read whatever its accents, capitals and apostrophes', () => {
    const words = personWords(["Áine O'Neill"], ['+353 87 555 0199'])
    const told = (text: string) =>
      toldIn(text, words).map(({ from, to, sure }) => `${text.slice(from, to)}${sure ? '!' : ''}`)
    expect(told("aine o'neill’s lens; ask O’Neill")).toEqual(["aine o'neill!", 'Neill'])
    expect(told('call 087-555 0199 or 112')).toEqual(['087-555 0199!'])
    expect(told('reads 55.0 °C at 19:9')).toEqual([])
    expect(isCalled('Áine', ["Aine O'Neill"])).toBe(true)
    expect(isCalled('Aine Stone', ["Aine O'Neill"])).toBe(false)
  })

  it('of what people cannot eat only their own clause goes', () => {
    const words = personWords(['Maria Quill'], [])
    expect(withoutClauses('Maria: nuts, sesame; Tom: none', words, 200)).toBe('[erased]; Tom: none')
    expect(withoutClauses('nuts (Maria), shellfish', words, 200)).toBe('[erased], shellfish')
    expect(withoutClauses('none', words, 200)).toBe('none')
  })
})
