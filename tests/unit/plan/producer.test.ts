import { describe, expect, test } from 'vitest'
import { faults, fixtureText, lambWith, read } from './shoots'

const one = (pointer: string, value: unknown) => faults(lambWith({ [pointer]: value }))

describe('what only the producer knows', () => {
  test('may be left out, in whole and in part', () => {
    expect(faults(lambWith({ '/callSheet': {}, '/risk': {} }))).toEqual([])
    expect(faults(lambWith({ '/callSheet/emergency': '112' }))).toEqual([])
    expect(faults(lambWith({ '/callSheet': undefined, '/risk': undefined }))).toEqual([])
  })
  test('is kept as written', () => {
    const full = read(JSON.parse(fixtureText('full')))
    expect([full.callSheet?.emergency, full.callSheet?.contacts?.[0]?.phone, full.risk?.responsible]).toEqual([
      '112 or 999',
      '+353 1 555 0100',
      'Producer',
    ])
  })
  test.each<[string, unknown, string]>([
    [
      '/callSheet/contacts',
      [{ name: 'Producer', phone: 'ask at the gate' }],
      '/callSheet/contacts/0/phone: "ask at the gate" is not a telephone number. Write its digits, such as "+353 1 496 0000".',
    ],
    [
      '/callSheet/contacts',
      [{ name: 'Producer' }],
      '/callSheet/contacts/0/phone: A telephone number is missing here. Write it in words.',
    ],
    [
      '/callSheet/emergency',
      'the usual',
      '/callSheet/emergency: "the usual" is not an emergency number. Write its digits, such as "112".',
    ],
    [
      '/callSheet/hospital',
      7,
      '/callSheet/hospital: 7 is not the nearest hospital. Write it in words, in quotation marks.',
    ],
    ['/callSheet/phone', '112', '/callSheet/phone: "phone" is not known here. '],
    ['/risk/fireRule', 'none', '/risk/fireRule: "fireRule" is not known here. Did you mean "fireRules"?'],
    ['/cooks/0/roast/frozen', 'yes', '/cooks/0/roast/frozen: "yes" is neither true nor false. '],
  ])('%s of %j is told in a sentence', (pointer, value, sentence) => {
    const found = one(pointer, value)
    expect(found).toHaveLength(1)
    expect(found[0]).toContain(sentence)
  })
})
