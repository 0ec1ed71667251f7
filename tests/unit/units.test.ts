import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  celsius,
  type Dimension,
  formatDuration,
  formatLength,
  formatMass,
  formatRise,
  formatShare,
  formatTemp,
  formatTempBoth,
  kelvins,
  kilograms,
  metres,
  readQuantity,
  seconds,
} from '../../lib/units'

const si = (text: unknown, dimension: Dimension) => {
  const read = readQuantity(text, dimension)
  return read.ok ? read.si : read.sentence
}

describe('readQuantity: quantities as people write them', () => {
  test.each<[string, Dimension, number]>([
    ['2 h 30 min', 'duration', 9000],
    ['75 min', 'duration', 4500],
    ['1 h 5 min 10 s', 'duration', 3910],
    ['90 minutes', 'duration', 5400],
    ['4.1 kg', 'mass', 4.1],
    ['1,5 kg', 'mass', 1.5],
    ['9 lb', 'mass', 9 * 0.45359237],
    ['1 lb 8 oz', 'mass', 1.5 * 0.45359237],
    ['850g', 'mass', 0.85],
    ['12cm', 'length', 0.12],
    ['4.7 in', 'length', 0.11938],
    ['5 ft 3 in', 'length', 1.6002],
    ['325 °F', 'temperature', (325 - 32) / 1.8],
    ['-3 °C', 'temperature', -3],
    ['−3 °C', 'temperature', -3],
    ['+4 °C', 'temperature', 4],
    ['150 ° C', 'temperature', 150],
    ['150ºc', 'temperature', 150],
    ['212\u202f°F', 'temperature', 100],
    ['10.8 km/h', 'speed', 3],
    ['65 %', 'share', 0.65],
  ])('%s is a %s', (text, dimension, value) => expect(si(text, dimension)).toBeCloseTo(value, 9))
})

describe('readQuantity: a sentence that shows what would be right', () => {
  test.each<[unknown, Dimension, string]>([
    [3.2, 'mass', '3.2 what? Write "3.2 kg" or "7 lb".'],
    ['3.2', 'mass', '3.2 what? Write "3.2 kg" or "7 lb".'],
    [325, 'temperature', '325 what? Write "325 °C" or "325 °F".'],
    [75, 'duration', '75 what? Write "75 min" or "2 h 30 min".'],
    [2, 'duration', '2 what? Write "2 min" or "2 h".'],
    ['2 h 30', 'duration', '30 what? Write "30 min" or "2 h 30 min".'],
    [0.65, 'share', '0.65 what? Write "65 %" or "0.65 %".'],
    ['  ', 'mass', 'A mass is missing here. Write "3.2 kg" or "7 lb".'],
    [undefined, 'mass', 'A mass is missing here. Write "3.2 kg" or "7 lb".'],
    ['NaN', 'mass', '"NaN" is not a mass. Write "3.2 kg" or "7 lb".'],
    [Number.NaN, 'mass', 'This is not a mass. Write "3.2 kg" or "7 lb".'],
    [true, 'mass', 'This is not a mass. Write "3.2 kg" or "7 lb".'],
    ['1e3 kg', 'mass', '"1e3 kg" is not a mass. Write "3.2 kg" or "7 lb".'],
    ['3 lb', 'temperature', '"lb" is a unit of mass; here stands a temperature. Write "150 °C" or "300 °F".'],
    ['300 K', 'temperature', '"K" is no unit of temperature. Write "150 °C" or "300 °F".'],
    ['1,500 g', 'mass', '"1,500 g" can be read two ways. Write "1500" or "1.500" with the unit.'],
    ['1 500 g', 'mass', '"1 500 g" has a gap in its number. Write "1500 g".'],
    ['5 °C 3 °C', 'temperature', '"5 °C 3 °C" holds more than one number. Write "150 °C" or "300 °F".'],
    ['30 min 2 h', 'duration', '"30 min 2 h" holds two numbers that do not add up. Write "75 min" or "2 h 30 min".'],
    ['2 h -5 min', 'duration', '"2 h -5 min" holds two numbers that do not add up. Write "75 min" or "2 h 30 min".'],
    ['9999999999999 kg', 'mass', '"9999999999999 kg" is too large a mass. Write "3.2 kg" or "7 lb".'],
  ])('%j as a %s', (text, dimension, sentence) => expect(si(text, dimension)).toBe(sentence))

  test('whatever is written, a finite number or a sentence with a full stop comes back', () => {
    const dimension = fc.constantFrom<Dimension>('temperature', 'mass', 'length', 'duration', 'speed', 'share')
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.jsonValue(), fc.double()), dimension, (written, what) => {
        const read = readQuantity(written, what)
        return read.ok ? Number.isFinite(read.si) : read.sentence.endsWith('.')
      }),
      { numRuns: 2000 },
    )
  })
})

describe('formatted quantities', () => {
  test.each([
    [formatTemp(celsius(150)), '150 °C'],
    [formatTemp(celsius(150), 'us'), '302 °F'],
    [formatTemp(celsius(-3)), '−3 °C'],
    [formatTemp(celsius(-0.2)), '0 °C'],
    [formatTemp(celsius(-0.2), 'metric', 1), '−0.2 °C'],
    [formatTempBoth(celsius(63)), '63 °C / 145 °F'],
    [formatRise(kelvins(5), 'us'), '9 °F'],
    [formatMass(kilograms(3.2)), '3.2 kg'],
    [formatMass(kilograms(3.2), 'us'), '7.1 lb'],
    [formatMass(kilograms(0.85)), '850 g'],
    [formatLength(metres(0.12)), '12 cm'],
    [formatLength(metres(0.12), 'us'), '4.7 in'],
    [formatLength(metres(0.008)), '8 mm'],
    [formatDuration(seconds(7500)), '2 h 05 min'],
    [formatDuration(seconds(3599)), '1 h'],
    [formatDuration(seconds(59.7)), '1 min'],
    [formatDuration(seconds(-90)), '−2 min'],
    [formatDuration(seconds(40)), '40 s'],
    [formatShare(0.954), '95 %'],
  ])('%s', (written, right) => expect(written).toBe(right))

  test('what is printed in full reads back as the same quantity', () => {
    fc.assert(
      fc.property(fc.integer({ min: -40, max: 500 }), (c) => {
        expect(si(formatTemp(celsius(c)), 'temperature')).toBeCloseTo(c, 9)
      }),
    )
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2880 }), (min) => {
        expect(si(formatDuration(seconds(min * 60)), 'duration')).toBe(min * 60)
      }),
    )
  })
})
