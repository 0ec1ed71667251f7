import { describe, expect, it } from 'vitest'
import { readReadings } from '../../../lib/plan/read-readings'

const faults = (text: string, cooks: readonly string[] = ['hero']) => {
  const read = readReadings(text, cooks)
  return read.ok ? [] : read.problems.map(({ pointer, sentence }) => `${pointer}: ${sentence}`)
}
const readings = (text: string, cooks: readonly string[] = ['hero'], id = 'hero') => {
  const read = readReadings(text, cooks)
  if (!read.ok) throw new Error(read.problems.map(({ sentence }) => sentence).join(' '))
  return read.value.get(id)
}

describe('readings as CSV', () => {
  it('columns may stand in any order, °F is converted, blank lines and carriage returns do not count', () => {
    expect(readings('sensor,temp_F,t_s\r\n\r\ncore,140,60\r\ncooker,302,0\r\n')).toEqual([
      { t: 60, sensor: 'core', tempC: expect.closeTo(60, 6) },
      { t: 0, sensor: 'cooker', tempC: expect.closeTo(150, 6) },
    ])
  })
  it('several cooks have their own', () => {
    const text = 't_s,sensor,temp_C,cook\n60,core,20,hero\n60,core,30,twin\n'
    expect(readings(text, ['hero', 'twin'], 'twin')).toEqual([{ t: 60, sensor: 'core', tempC: 30 }])
  })
  it('a header alone is no reading', () => expect(readings('t_s,sensor,temp_C\n')).toEqual([]))

  it.each([
    ['', '/readings/1: The file of readings is empty. Its first line is t_s,sensor,temp_C.'],
    ['t_s,sensor\n', '/readings/1: The column temp_C, or temp_F, is missing.'],
    ['t_s,sensor,temp_C,temp_F\n', '/readings/1: Give temp_C or temp_F, not both.'],
    ['t_s,sensor,temp_C,t_s\n', '/readings/1: The column t_s is there twice; keep one.'],
    ['time,sensor,temp_C\n', /^\/readings\/1: There is no column "time"/],
    ['t_s,sensor,temp_C\n60,core\n', '/readings/2: The line has 2 values; the header has 3 columns.'],
    ['t_s,sensor,temp_C\nsoon,core,4\n', /^\/readings\/2: t_s is "soon"/],
    ['t_s,sensor,temp_C\n60,core,4\n\n60,lid,4\n', /^\/readings\/4: The sensor "lid" is not known/],
    ['t_s,sensor,temp_C\n60,core,0x10\n', /^\/readings\/2: temp_C is "0x10"/],
    ['t_s,sensor,temp_F\n60,core,\n', /^\/readings\/2: temp_F is ""/],
    ['t_s,sensor,temp_C,cook\n60,core,4,tiwn\n', '/readings/2: There is no cook "tiwn"; the shoot has hero.'],
  ] as const)('%j is refused at its line', (text, told) => {
    const found = faults(text)
    expect(found).toHaveLength(1)
    if (typeof told === 'string') expect(found[0]).toBe(told)
    else expect(found[0]).toMatch(told)
  })
  it('with several cooks the column cook is asked for', () =>
    expect(faults('t_s,sensor,temp_C\n', ['hero', 'twin'])).toEqual([
      '/readings/1: The column cook is missing: the shoot has 2 cooks, hero, twin.',
    ]))
  it('every faulty line is told', () =>
    expect(faults('t_s,sensor,temp_C\nx,core,4\n60,core,4\ny,core,4\n')).toHaveLength(2))
})
