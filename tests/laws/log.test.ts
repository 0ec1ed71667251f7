import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { foldLog } from '../../lib/log/fold'
import { EMPTY_LOG, type Line, type Log, merge } from '../../lib/log/log'
import { readLog, writeLog } from '../../lib/log/ndjson'
import { MOMENT_IDS } from '../../lib/model/moment-ids'
import { line } from '../unit/log/lines'

/** Five phones whose clocks run wrong by up to ten minutes, and a day of what they log; some of it still on its way. */
const DEVICES = ['phone-a', 'phone-b', 'phone-c', 'phone-d', 'phone-e']
const minute = fc.double({ min: 0, max: 600, noNaN: true })
const what = fc.oneof(
  fc.record({
    kind: fc.constant('reading' as const),
    rest: fc.record({
      cook: fc.constantFrom('hero', 'twin'),
      sensor: fc.constantFrom('core', 'cooker'),
      temp: fc.integer({ min: -5, max: 300 }).map((c) => `${c} °C`),
    }),
  }),
  fc.record({
    kind: fc.constant('mark' as const),
    rest: fc.record({ cook: fc.constantFrom('hero', 'twin'), moment: fc.constantFrom(...MOMENT_IDS) }),
  }),
  fc.record({
    kind: fc.constant('take' as const),
    rest: fc.record({
      shot: fc.constantFrom('x', 'y'),
      take: fc.integer({ min: 1, max: 2 }),
      camera: fc.constant('A'),
      roll: fc.constantFrom('start', 'end'),
    }),
  }),
  fc.record({
    kind: fc.constant('probe-check' as const),
    rest: fc.record({
      cook: fc.constant('hero'),
      sensor: fc.constant('core'),
      found: fc.constantFrom('in', 'moved', 'pulled-out', 'wrong', 'right'),
    }),
  }),
  fc.record({
    kind: fc.constant('shot-state' as const),
    rest: fc.record({ shot: fc.constantFrom('x', 'y'), state: fc.constantFrom('roll', 'caught', 'dropped') }),
  }),
  fc.record({
    kind: fc.constant('hold-start' as const),
    rest: fc.record({ cook: fc.constant('hero'), in: fc.constantFrom('oven', 'box') }),
  }),
)
const made = fc.record({
  what,
  minute,
  device: fc.nat(4),
  late: fc.integer({ min: 0, max: 200 }),
  unsent: fc.boolean(),
})
const corrected = fc.record({ of: fc.nat(60), minute, device: fc.nat(4), void: fc.boolean() })

const day = fc
  .record({
    made: fc.array(made, { minLength: 1, maxLength: 40 }),
    corrected: fc.array(corrected, { maxLength: 10 }),
    skews: fc.array(fc.integer({ min: -600, max: 600 }), { minLength: 5, maxLength: 5 }),
  })
  .map(({ made: entries, corrected: corrections, skews }) => {
    const by = (device: number) => ({ device: DEVICES[device], aheadS: skews[device] })
    const lines = entries.map((one) =>
      line(one.minute, one.what.kind, one.what.rest, { ...by(one.device), sentAfterMin: one.late, unsent: one.unsent }),
    )
    for (const one of corrections) {
      const target = lines[one.of % lines.length] as Line
      const rest = one.void ? { void: true } : { put: { at: '2027-05-15T13:00:00Z' } }
      lines.push(line(one.minute, 'correction', { corrects: target.entry.id, ...rest }, by(one.device)))
    }
    return { lines, skews }
  })
/** The lines in another order, some of them several times, in pieces that are merged one by one. */
const jumbled = day.chain(({ lines, skews }) =>
  fc.record({
    lines: fc.constant(lines),
    skews: fc.constant(skews),
    order: fc.shuffledSubarray([...lines, ...lines, ...lines.slice(0, 5)], {
      minLength: 2 * lines.length + Math.min(5, lines.length),
    }),
    cut: fc.integer({ min: 1, max: 9 }),
  }),
)
const inPieces = (lines: readonly Line[], size: number): Log => {
  let log = EMPTY_LOG
  for (let i = 0; i < lines.length; i += size) log = merge(log, lines.slice(i, i + size))
  return log
}
const asText = (log: Log) => JSON.stringify(foldLog(log))

describe('the slate log', () => {
  it('folds to the same state however the entries of five skewed devices are interleaved, doubled and reordered', () => {
    fc.assert(
      fc.property(jumbled, ({ lines, order, cut }) => {
        expect(asText(inPieces(order, cut))).toBe(asText(inPieces(lines, lines.length)))
      }),
      { numRuns: 300, seed: 5 },
    )
  })
  it('is a union: merging in any grouping and either direction gives the same log', () => {
    fc.assert(
      fc.property(day, fc.nat(), fc.nat(), ({ lines }, i, j) => {
        const [a, b, c] = [lines, lines.slice(i % lines.length), lines.slice(0, j % lines.length)].map((part) =>
          merge(EMPTY_LOG, part),
        ) as [Log, Log, Log]
        const both = (x: Log, y: Log) => merge(x, y.values())
        expect(asText(both(both(a, b), c))).toBe(asText(both(a, both(b, c))))
        expect(asText(both(b, c))).toBe(asText(both(c, b)))
      }),
      { numRuns: 100, seed: 6 },
    )
  })
  it('knows a clock that runs wrong to the second once its device has sent anything', () => {
    fc.assert(
      fc.property(day, ({ lines, skews }) => {
        const found = foldLog(merge(EMPTY_LOG, lines)).skews
        for (const [device, { ahead }] of Object.entries(found))
          expect(ahead).toBeCloseTo(skews[DEVICES.indexOf(device)] as number, 0)
      }),
      { numRuns: 100, seed: 7 },
    )
  })
  it('comes back from its text as the same state', () => {
    fc.assert(
      fc.property(day, ({ lines }) => {
        const log = merge(EMPTY_LOG, lines)
        const back = readLog(writeLog(log.values()))
        expect(back.faults).toEqual([])
        expect(asText(merge(EMPTY_LOG, back.lines))).toBe(asText(log))
      }),
      { numRuns: 100, seed: 8 },
    )
  })
})
