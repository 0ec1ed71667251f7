import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  FRAME_RATES,
  type FrameRate,
  frames,
  framesInDay,
  framesOfTime,
  framesPerSecond,
  nearestFrame,
  printTimecode,
  readTimecode,
  timeOfFrames,
} from '../../../lib/plan/timecode'
import { seconds } from '../../../lib/units'
import published from '../../fixtures/published/timecode.json'

const read = (label: string, rate: FrameRate) => {
  const found = readTimecode(label, rate)
  return found.ok ? found.frames : found.sentence
}
const constant = (name: string) => published.constants.find((one) => one.name === name)?.v as number

describe('drop-frame at 29.97, by the worked values', () => {
  it(`prints and reads all ${published.drop_frame.length} of them`, () => {
    const rows = published.drop_frame.map(({ frame, tc }) => ({
      frame: read(tc, '29.97 drop'),
      tc: printTimecode(frames(frame), '29.97 drop'),
    }))
    expect(rows).toEqual(published.drop_frame)
  })
  it('has the frames of ten minutes, of a minute, of an hour and of a day', () => {
    expect(read('00:10:00;00', '29.97 drop')).toBe(constant('frames per 10 min'))
    expect(Number(read('00:03:00;02', '29.97 drop')) - Number(read('00:02:00;02', '29.97 drop'))).toBe(
      constant('frames per dropping minute'),
    )
    expect(read('01:00:00;00', '29.97 drop')).toBe(constant('frames per hour'))
    expect(framesInDay('29.97 drop')).toBe(constant('frames per 24 h'))
  })
  it('keeps the time of the clock as the worked values do, and non-drop runs slow against it', () => {
    const drop = timeOfFrames(frames(constant('frames per hour')), '29.97 drop')
    expect(drop).toBeCloseTo(constant('real seconds of 107892 frames'), 6)
    const nonDrop = read('01:00:00:00', '29.97') as number
    expect(timeOfFrames(frames(nonDrop), '29.97')).toBeCloseTo(
      constant('real seconds of NDF 01:00:00:00 (108000 frames)'),
      6,
    )
    const dayMs = 86_400_000 - 1000 * timeOfFrames(framesInDay('29.97 drop'), '29.97 drop')
    expect(dayMs).toBeCloseTo(constant('DF drift per 24 h of labels vs real, ms'), 1)
  })
  it.each(published.invalid_labels)('refuses %s, which is left out, and says which comes instead', (label) => {
    expect(read(label, '29.97 drop')).toMatch(/^Drop-frame leaves .* out: .*Write "00:0\d:00;02"\.$/)
  })
  it.each(published.valid_labels)('reads %s', (label) => {
    expect(read(label, '29.97 drop')).toBeTypeOf('number')
  })
})

describe('timecode at every rate', () => {
  it.each(FRAME_RATES)(
    'at %s any frame of the day is read back from its label, and the next label is the next frame',
    (rate) => {
      const inDay = fc.integer({ min: 0, max: framesInDay(rate) - 1 })
      fc.assert(
        fc.property(inDay, (n) => {
          expect(read(printTimecode(frames(n), rate), rate)).toBe(n)
          expect(printTimecode(frames(n - framesInDay(rate)), rate)).toBe(printTimecode(frames(n), rate))
          expect(framesOfTime(timeOfFrames(frames(n), rate), rate)).toBe(n)
        }),
        { numRuns: 200 },
      )
    },
  )
  it('59.94 drop leaves four labels out', () => {
    const last = read('00:00:59;59', '59.94 drop') as number
    expect(printTimecode(frames(last + 1), '59.94 drop')).toBe('00:01:00;04')
    expect(read('00:01:00;03', '59.94 drop')).toMatch(/left|leaves/)
    expect(framesInDay('59.94 drop') / framesPerSecond('59.94 drop')).toBeCloseTo(86_400 - 0.0864, 4)
  })
  it.each<[unknown, FrameRate, RegExp]>([
    [undefined, '25', /missing here.*"01:00:00:00"/],
    [3600, '25', /3600 is no timecode/],
    ['1:2', '29.97 drop', /is no timecode.*"01:00:00;00"/],
    ['10:00:00:25', '25', /names frame 25; at 25 they run from 00 to 24/],
    ['24:00:00:00', '24', /no "24:00:00:00" in a day/],
    ['10:00:00;10', '25', /semicolon marks drop-frame.*"10:00:00:10"/],
  ])('refuses %s at %s with one sentence', (label, rate, sentence) => {
    const found = readTimecode(label, rate)
    expect(found.ok ? '' : found.sentence).toMatch(sentence)
  })
  it('takes what was read off a camera for the nearest frame there is', () => {
    const at = (label: string, rate: FrameRate) => printTimecode(nearestFrame(label, rate), rate)
    expect(at('16:05:12', '25')).toBe('16:05:12:00')
    expect(at('16:05:12:29', '25')).toBe('16:05:12:24')
    expect(at('16:05:12.500', '24')).toBe('16:05:12:12')
    expect(at('16:05:00:01', '29.97 drop')).toBe('16:05:00;02')
  })
  it('an hour of true time is an hour of labels within a frame at whole rates', () => {
    for (const rate of ['24', '25', '30', '50', '60'] as const)
      expect(printTimecode(framesOfTime(seconds(3600), rate), rate)).toBe('01:00:00:00')
  })
})
