import { expect, test } from 'vitest'
import type { Narrowing, PullWindow } from '../../../lib/model/what-narrows'
import { narrowingSentence } from '../../../lib/plan/narrowing-words'
import { instant } from '../../../lib/units'

const window = (from: number, to: number): PullWindow => ({ earlyS: from * 60, lateS: to * 60 })
const CLOCK = { meatOn: instant(Date.UTC(2027, 4, 15, 13, 0)), zone: 'Europe/Dublin' }
const say = (now: PullWindow, found: Omit<Narrowing, 'gainS'>) => {
  const gain = (found.measured ? -1 : 1) * (now.lateS - now.earlyS - (found.other.lateS - found.other.earlyS))
  const each = { ...found, gainS: gain }
  return narrowingSentence(each, { now, each: [each] }, CLOCK)
}

test.each<[string, PullWindow, Omit<Narrowing, 'gainS'>, string | undefined]>([
  [
    'worth measuring',
    window(120, 184),
    { what: 'thickness', measured: false, other: window(130, 171) },
    'Measure it: the window at pull shrinks from 64 to 41 min.',
  ],
  [
    'measured',
    window(122, 168),
    { what: 'thickness', measured: true, other: window(100, 195) },
    'Measured: pull 16:02 to 16:48 instead of 15:40 to 17:15.',
  ],
  [
    'measured, as wide, but elsewhere',
    window(122, 168),
    { what: 'thickness', measured: true, other: window(142, 188) },
    'Measured: pull 16:02 to 16:48 instead of 16:22 to 17:08.',
  ],
  [
    'measured, and nothing hangs on it',
    window(120, 161),
    { what: 'width-and-length', measured: true, other: window(120, 162) },
    'Measured. For this cook the window at pull, 41 min, hardly hangs on it.',
  ],
  [
    'not worth it, but asked for',
    window(120, 161),
    { what: 'thickness', measured: false, other: window(120, 160) },
    'Measured it would hardly narrow the window at pull, 41 min.',
  ],
  ['not worth it', window(120, 161), { what: 'start', measured: false, other: window(120, 160) }, undefined],
  [
    'the cooker',
    window(120, 184),
    { what: 'cooker', measured: false, other: window(122, 182) },
    'With a thermometer at meat level the window at pull shrinks from 64 to 60 min.',
  ],
])('%s', (_, now, found, sentence) => expect(say(now, found)).toBe(sentence))
