import { describe, expect, it } from 'vitest'
import type { LoggedReading } from '../../../lib/log/for-forecast'
import { trustedReadings } from '../../../lib/log/trusted-probe'
import type { Watched } from '../../../lib/model/reading-watch'
import { troublesOf } from '../../../lib/session/troubles'
import { celsius, seconds } from '../../../lib/units'
import { at } from '../log/lines'

const watched = (code: Watched['code']): Watched => ({ code, sentence: 'It is so.', action: 'Do it.' })

describe('troubles of a cook', () => {
  it('keep id and deadline while they last', () => {
    const came = troublesOf('hero', [watched('stall')], [], at(0))
    expect(came).toMatchObject([{ action: 'Do it.', deadline: at(30) }])
    expect(troublesOf('hero', [watched('stall')], came, at(8))).toMatchObject([{ id: came[0]?.id, deadline: at(30) }])
  })
  it('that come and go with each reading are one', () => {
    const came = troublesOf('hero', [watched('cooker-off-plan')], [], at(0))
    const gone = troublesOf('hero', [], came, at(4))
    expect(gone).toEqual(came)
    expect(troublesOf('hero', [], gone, at(11))).toEqual([])
  })
  it('that are put right are over at once, and are others when they come again', () => {
    const came = troublesOf('hero', [watched('lid-left-open')], [], at(0))
    expect(troublesOf('hero', [], came, at(1))).toEqual([])
    expect(troublesOf('hero', [watched('lid-left-open')], [], at(20))[0]?.id).not.toBe(came[0]?.id)
  })
  it('of one cook are not another’s', () => {
    const came = troublesOf('hero', [watched('stall')], [], at(0))
    expect(troublesOf('twin', [], came, at(1))).toEqual([])
  })
})

describe('of several probes', () => {
  const read = (probe: string, min: number, tempC: number): LoggedReading => ({
    t: seconds(60 * min),
    sensor: 'core',
    tempC: celsius(tempC),
    probe,
  })
  const probes = (readings: readonly LoggedReading[], min: number) => [
    ...new Set(trustedReadings(readings, seconds(60 * min)).map(({ probe }) => probe)),
  ]
  const two = Array.from({ length: 20 }, (_, i) => read(i % 2 ? 'core-2#0' : 'core#0', i, i % 2 ? 20 + i : 24 + i))
  it('the coldest lately counts, whichever read last', () => {
    expect(probes(two, 19)).toEqual(['core-2#0'])
    expect(probes(two.slice(0, -1), 19)).toEqual(['core-2#0'])
  })
  it('one that has gone silent gives way', () => {
    const later = [40, 42, 44].map((min) => read('core#0', min, 24 + min))
    expect(probes([...two, ...later], 44)).toEqual(['core#0'])
  })
  it('one that was moved counts from its new place on', () => {
    expect(probes([...two.filter(({ probe }) => probe === 'core#0'), read('core#1', 21, 30)], 21)).toEqual(['core#1'])
  })
})
