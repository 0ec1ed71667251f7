import { describe, expect, it } from 'vitest'
import { MEMORY, writtenMemory } from '../../../lib/plan/cooker-memory-fields'

const right = { cooks: 3, level: '−11 °C ± 3 °C', pace: '6 % ± 4 %', warmUp: '50 min ± 6 min' }
const sentenceOf = (value: unknown) => MEMORY.safeParse(value).error?.issues.map(({ message }) => message)

describe('a remembered cooker in the shoot file', () => {
  it('is read with its spreads; a rise of 18 °F is one of 10 °C', () => {
    const memory = MEMORY.parse(right)
    expect(memory.level).toEqual({ mean: -11, sd: 3 })
    expect(memory.pace.mean).toBeCloseTo(Math.log(1.06))
    expect(memory.warmUp).toEqual({ mean: 3000, sd: 360 })
    const us = MEMORY.parse({ ...right, level: '-18 °F ± 9 °F' }).level
    expect([us.mean, us.sd]).toEqual([expect.closeTo(-10), expect.closeTo(5)])
  })
  it('comes back as it was written', () => {
    const memory = MEMORY.parse({ ...right, tie: 0.4 })
    expect(MEMORY.parse(writtenMemory(memory))).toEqual({ ...memory, pace: expect.objectContaining({ sd: 0.04 }) })
    expect(writtenMemory(memory)).toMatchObject({ level: '−11.0 °C ± 3.0 °C', pace: '6.0 % ± 4.0 %', tie: 0.4 })
  })
  it.each([
    ['level', '-11 °C', '"-11 °C" is not a value with its spread. Write it with its spread, such as "−11 °C ± 3 °C".'],
    [
      'level',
      '-90 °C ± 3 °C',
      '"-90 °C ± 3 °C" is further off than any cooker that works. Write it with its spread, such as "−11 °C ± 3 °C".',
    ],
    [
      'pace',
      '6 % ± 0 %',
      'The spread of "6 % ± 0 %" is narrower than a few cooks can tell. Write it with its spread, such as "6 % ± 4 %".',
    ],
    [
      'pace',
      undefined,
      'How much longer a roast takes here is missing here. Write it with its spread, such as "6 % ± 4 %".',
    ],
  ])('%s %s is refused with one sentence', (key, written, sentence) => {
    expect(sentenceOf({ ...right, [key]: written })).toEqual([sentence])
  })
})
