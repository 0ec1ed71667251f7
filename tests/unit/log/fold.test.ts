import { describe, expect, it } from 'vitest'
import { foldLog } from '../../../lib/log/fold'
import { marksOf, readingsOf } from '../../../lib/log/for-forecast'
import { jumpQuestion } from '../../../lib/log/jump'
import { EMPTY_LOG, type Line, merge } from '../../../lib/log/log'
import { celsius } from '../../../lib/units'
import { at, line, logOf, mark, newId, reading } from './lines'

const told = (...lines: readonly Line[]) => foldLog(logOf(...lines)).told
const core = (...lines: readonly Line[]) =>
  (foldLog(logOf(...lines)).probes['hero/core']?.readings ?? []).map(({ temp }) => temp)
const correct = (minutes: number, corrects: string, rest: object, extra = {}) =>
  line(minutes, 'correction', { corrects, ...rest }, extra)

describe('marks', () => {
  it('of one moment by two phones: the earlier counts, and both are told', () => {
    const lines = [mark(10, 'off-heat', { device: 'phone-b' }), mark(9 + 1 / 3, 'off-heat')]
    expect(foldLog(logOf(...lines)).marks['hero/off-heat']?.at).toBe(at(9 + 1 / 3))
    expect(told(...lines)).toEqual(["2 phones marked 'off heat', 40 s apart; the earlier counts."])
  })
  it('pressed twice on one phone are told as that', () => {
    expect(told(mark(10, 'turn'), mark(11, 'turn'))).toEqual([
      "'turn' was marked 2 times, 1 min apart; the earlier counts.",
    ])
  })
  it("are compared by the server's clock, and the phone whose clock is wrong is told", () => {
    const ahead = mark(9, 'pull', { device: 'phone-b', aheadS: 300 })
    const state = foldLog(logOf(mark(10, 'pull'), ahead))
    expect(state.marks['hero/pull']).toMatchObject({ at: at(9), device: 'phone-b' })
    expect(state.told).toEqual([
      "2 phones marked 'pull', 1 min apart; the earlier counts.",
      'phone-b runs 5 min ahead; its times are set right.',
    ])
  })
  it('on their way are set right by what is known of their phone', () => {
    const sent = reading(1, 20, { device: 'phone-b', aheadS: -120 })
    const waiting = mark(30, 'pull', { device: 'phone-b', aheadS: -120, unsent: true })
    expect(foldLog(logOf(sent, waiting)).marks['hero/pull']?.at).toBe(at(30))
  })
  it('queued for two hours keep their time: it is the sending that tells the clock', () => {
    const late = mark(30, 'pull', { device: 'phone-b', aheadS: 60, sentAfterMin: 120 })
    expect(foldLog(logOf(late)).marks['hero/pull']?.at).toBe(at(30))
  })
  it('of a phone that was set right in between keep the time of their own sending', () => {
    const lines = [mark(10, 'turn', { device: 'b', aheadS: 600 }), mark(30, 'pull', { device: 'b', aheadS: 0 })]
    const { marks } = foldLog(logOf(...lines))
    expect([marks['hero/turn']?.at, marks['hero/pull']?.at]).toEqual([at(10), at(30)])
  })
})

describe('corrections', () => {
  const wrong = reading(10, 74)
  it('put what should have stood there, and the log keeps the entry', () => {
    const log = logOf(wrong, correct(12, wrong.entry.id, { put: { temp: '47 °C' } }))
    expect(foldLog(log).probes['hero/core']?.readings).toMatchObject([{ at: at(10), temp: 47 }])
    expect(log.get(wrong.entry.id)?.document.temp).toBe('74 °C')
  })
  it('take out what did not happen, and can be taken back themselves', () => {
    const gone = correct(12, wrong.entry.id, { void: true })
    expect(core(wrong, gone)).toEqual([])
    const back = correct(13, gone.entry.id, { void: true })
    expect(core(wrong, gone, back)).toEqual([74])
    expect(foldLog(logOf(wrong, gone, back)).corrections.map((c) => c.outcome)).toEqual(['taken-back', 'applied'])
    expect(core(wrong, gone, back, correct(14, back.entry.id, { void: true }))).toEqual([])
  })
  it('of the same field: the later counts; of others: both', () => {
    const fix = (minutes: number, put: object) => correct(minutes, wrong.entry.id, { put })
    expect(core(fix(13, { temp: '48 °C' }), fix(12, { temp: '47 °C', hand: true }), wrong)).toEqual([48])
  })
  it("of the time move the entry, off the corrector's clock", () => {
    const pull = mark(30, 'pull')
    const fix = correct(40, pull.entry.id, { put: { at: '2027-05-15T12:27:00Z' } }, { device: 'b', aheadS: 120 })
    expect(foldLog(logOf(pull, fix)).marks['hero/pull']?.at).toBe(at(25))
  })
  it('of an entry that is not there wait, and say so', () => {
    const id = newId()
    expect(told(correct(1, id, { void: true }))).toEqual([
      `A correction waits for the entry ${id}, which is still on its way.`,
    ])
  })
  it('that leave no readable entry are passed over and told', () => {
    const fix = correct(12, wrong.entry.id, { put: { temp: 47 } })
    expect(core(wrong, fix)).toEqual([74])
    expect(told(wrong, fix)[0]).toContain('was passed over: 47 what?')
  })
  it('that void each other end all the same', () => {
    const [a, b] = [newId(), newId()]
    const both = [correct(1, b, { void: true }, { id: a }), correct(2, a, { void: true }, { id: b })]
    expect(foldLog(logOf(...both)).corrections).toHaveLength(2)
  })
})

describe('probes', () => {
  const check = (minutes: number, found: string, rest = {}) =>
    line(minutes, 'probe-check', { cook: 'hero', sensor: 'core', found, ...rest })
  it('declared wrong are not believed until they are right again', () => {
    expect(core(reading(1, 10), check(2, 'wrong'), reading(3, 90), check(4, 'right'), reading(5, 14))).toEqual([10, 14])
  })
  it('may have been wrong for a while', () => {
    expect(core(reading(1, 10), reading(3, 90), check(4, 'wrong', { from: '2027-05-15T12:02:00Z' }))).toEqual([10])
  })
  it('pulled out read the air; by hand somebody still reads the meat', () => {
    const hand = line(6, 'reading', { cook: 'hero', sensor: 'core', temp: '50 °C', hand: true })
    const state = foldLog(logOf(reading(1, 10), check(2, 'pulled-out'), reading(3, 90), hand))
    expect(state.probes['hero/core']).toMatchObject({ out: true, readings: [{ temp: 10 }, { temp: 50 }] })
  })
  it('moved are in another place from then on', () => {
    const { readings } = foldLog(logOf(reading(1, 10), check(2, 'moved'), reading(3, 7))).probes['hero/core'] ?? {}
    expect(readings?.map(({ placed }) => placed)).toEqual([0, 1])
  })
  it('give a forecast their readings and marks in seconds after meat-on', () => {
    const lines = [
      mark(0, 'meat-on'),
      reading(2, 12),
      reading(1, 150, {}, 'cooker'),
      reading(1, 15, {}, 'air'),
      mark(90, 'pull'),
    ]
    const day = foldLog(logOf(...lines))
    expect(readingsOf(day, 'hero')).toEqual([
      { t: 60, sensor: 'cooker', tempC: 150, probe: 'cooker#0' },
      { t: 120, sensor: 'core', tempC: 12, probe: 'core#0' },
    ])
    expect(marksOf(day, 'hero')).toEqual([
      { moment: 'meat-on', t: 0 },
      { moment: 'pull', t: 5400 },
    ])
    expect(readingsOf(day, 'twin')).toEqual([])
  })
  it('that jump are asked back', () => {
    const last = { at: at(0), temp: celsius(46), id: newId(), hand: false }
    expect(jumpQuestion('core', last, { at: at(1), temp: celsius(64) })).toContain('Is 64 °C right')
    expect(jumpQuestion('core', last, { at: at(10), temp: celsius(52) })).toBeNull()
    expect(jumpQuestion('core', null, { at: at(10), temp: celsius(52) })).toBeNull()
  })
})

describe('shots, takes and holds', () => {
  const take = (minutes: number, rest: object, extra = {}) =>
    line(minutes, 'take', { shot: 'first-cut', take: 1, camera: 'A', ...rest }, extra)
  it('roll from the first start to the end or the verdict, told by any phone', () => {
    const [start, end] = [
      take(1, { roll: 'start', timecode: '12:01:00:00' }),
      take(3, { roll: 'end' }, { device: 'b' }),
    ]
    const verdict = take(4, { verdict: 'good', note: 'steam' }, { device: 'c' })
    expect(foldLog(logOf(start)).takes).toMatchObject([{ rolling: true }])
    expect(foldLog(logOf(verdict, end, start))).toMatchObject({
      takes: [{ rolling: false, from: at(1), to: at(3), verdict: 'good', notes: ['steam'], timecode: '12:01:00:00' }],
      shots: { 'first-cut': { state: 'caught', since: at(4) } },
    })
  })
  it('stay on standby after a take that was no good', () => {
    expect(foldLog(logOf(take(1, { roll: 'start' }), take(3, { verdict: 'no-good' }))).shots['first-cut']?.state).toBe(
      'standby',
    )
  })
  it('hold the roast from a start to its end', () => {
    const lines = [line(1, 'hold-start', { cook: 'hero', in: 'oven' }), line(9, 'hold-end', { cook: 'hero' })]
    expect(foldLog(logOf(...lines)).holds).toEqual([{ cook: 'hero', from: at(1), to: at(9), in: 'oven' }])
  })
  it('keep answers, food, camera clocks and changes', () => {
    const state = foldLog(
      logOf(
        line(1, 'call-answer', { call: 'call-x', answer: 'coming' }, { person: 'cam-1' }),
        line(2, 'food', { cook: 'hero', is: 'out' }),
        line(3, 'camera-clock', { camera: 'A', timecode: '12:03:00:00' }),
        line(9, 'camera-clock', { camera: 'A', timecode: '12:09:00:04' }),
        line(4, 'plan-change', { version: 2, what: 'later' }),
      ),
    )
    expect(state.answers['call-x']).toEqual([{ answer: 'coming', person: 'cam-1', at: at(1), to: null }])
    expect([state.food.hero?.is, state.changes.length]).toEqual(['out', 1])
    expect(state.cameraClocks.A).toEqual([
      { at: at(3), timecode: '12:03:00:00' },
      { at: at(9), timecode: '12:09:00:04' },
    ])
  })
})

describe('a merge', () => {
  it('is a union: twice the same changes nothing, and the first receipt counts', () => {
    const once = reading(1, 20)
    const again = { ...once, receipt: { received: at(9), sent: at(9) } }
    expect(merge(logOf(once), [again, once])).toEqual(logOf(once))
    expect(merge(merge(EMPTY_LOG, [again]), [once])).toEqual(logOf(once))
  })
  it('of one id with two contents comes out the same either way', () => {
    const [a, b] = [reading(1, 20), reading(1, 30)]
    const twin = reading(1, 30, { id: a.entry.id })
    expect(merge(logOf(a), [twin])).toEqual(merge(logOf(twin), [a]))
    expect(b.entry.id).not.toBe(a.entry.id)
  })
})
