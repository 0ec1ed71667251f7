import { describe, expect, it } from 'vitest'
import { sameDay } from '../../../app/set/correct-sheet'
import { logItems } from '../../../app/set/log-list'
import { faultOf, NOTHING, press, tempDocument, typedTemp, typedText } from '../../../app/set/typed-temp'
import { typedTimecode } from '../../../app/set/typed-timecode'
import { celsius } from '../../../lib/units'
import { at, line, reading } from '../log/lines'
import { live } from '../session/made-up-day'

const typed = (...keys: string[]) => keys.reduce(press, NOTHING)

describe('parts of the set board', () => {
  it('types a level with one point and a sign, in the unit of the person', () => {
    expect(typedText(typed('4', '6', '.', '.', '5'))).toBe('46.5')
    expect(typedText(typed('.', '5', 'sign'))).toBe('−0.5')
    expect(typedText(typed('0', '4'))).toBe('4')
    expect(typedTemp(typed('1', '1', '5'), 'us')).toBeCloseTo(46.1, 1)
    expect(tempDocument(typed('4', '.', 'sign'), 'us')).toBe('-4 °F')
    expect([typedTemp(NOTHING, 'metric'), typedText(typed('4', 'wipe'))]).toEqual([null, ''])
    expect(faultOf(celsius(900), 'metric')).toBe('No probe reads 900 °C. Type one from −40 °C to 700 °C.')
  })

  it('takes a timecode by its digits alone, and none that no camera shows', () => {
    expect(['16051210', ' 160512', '16:05:12;10'].map(typedTimecode)).toEqual([
      '16:05:12:10',
      '16:05:12',
      '16:05:12;10',
    ])
    expect(['', '1605', '25:05:12:10', '16:65:12:10', '16057210'].map(typedTimecode)).toEqual(Array(5).fill(null))
  })

  it('puts a time right to the nearest point at which the clock shows it', () => {
    const midnight = Date.parse('2027-05-15T23:58:00Z')
    expect(sameDay(midnight, '23:58', '00:03')).toBe('2027-05-16T00:03:00.000Z')
    expect(sameDay(midnight, '23:58', '23:40')).toBe('2027-05-15T23:40:00.000Z')
  })

  it('lists the log newest first by the server’s clock, and says what became of each line', () => {
    const day = live()
    const wrong = reading(10, 64)
    const ahead = line(12, 'note', { text: 'late clock' }, { device: 'phone-b', aheadS: 600 })
    for (const [min, one] of [
      [10, wrong],
      [12, ahead],
    ] as const)
      day.line(min, one)
    day.line(13, line(13, 'correction', { corrects: wrong.entry.id, void: true }))
    const items = logItems(day.session())
    expect(items.map(({ line: { entry } }) => entry.kind)).toEqual(['correction', 'note', 'reading'])
    expect(items.map(({ fate }) => fate)).toEqual(['stands', 'stands', 'void'])
    expect(items[1]?.at).toBe(at(12))
  })
})
