import { describe, expect, it } from 'vitest'
import { TONES } from '../../../app/set/feed/tones'
import { minutes } from '../../../lib/units'
import { at } from '../log/lines'
import { forecastOf, sessionDayWith } from '../session/made-up-day'
import { MadeUpServer, MadeUpTime, markOf, Phone, reading, settled } from './made-up-set'

const setUp = (changes: ConstructorParameters<typeof MadeUpServer>[1] = {}) => {
  const time = new MadeUpTime(at(0))
  const server = new MadeUpServer(time, changes)
  return { time, server }
}
const shown = ({ feed }: Phone) => feed.snapshot()
const texts = (phone: Phone) => shown(phone).session.told.notes.map(({ entry }) => entry.text)
const note = (text: string) => ({ kind: 'note', text })
/** The slice comes 40 min after noon; the call for it leads by 24 min, less what the forecast may be early. */
const SLICE = { id: 'f1', at: at(0), forecast: forecastOf({ 'first-slice': 40 }, 2) }
const CALLED = 'standby/call-first-cut'

describe('entries of a phone', () => {
  it('are kept on it before they are taken, and reach the others', async () => {
    const { time, server } = setUp()
    const [one, other] = [new Phone(server), new Phone(server)]
    await one.start('cam-1')
    await other.start()
    const taking = one.feed.add(reading(41))
    expect(one.store.lines.size).toBe(0)
    await taking
    expect(one.store.lines.size).toBe(1)
    await time.run(1)
    expect(shown(one)).toMatchObject({ link: 'live', waiting: 0 })
    expect(shown(other).session.told.probes['hero/core']?.last?.temp).toBe(41)
    expect(server.log[0]?.document.by).toEqual({ device: one.store.device, person: 'cam-1' })
  })
  it('go out once, whatever becomes of the answers, and through reloads', async () => {
    const { time, server } = setUp()
    const phone = new Phone(server)
    await phone.start()
    server.cut()
    await settled()
    for (let i = 0; i < 20; i++) await phone.feed.add(note(`note ${i}`))
    expect(shown(phone)).toMatchObject({ link: 'cut-off', waiting: 20 })
    await phone.reload()
    expect(shown(phone).waiting).toBe(20)
    server.reached = true
    server.losesAnswers = true
    await time.run(20)
    server.losesAnswers = false
    await phone.reload()
    await time.run(40)
    expect(shown(phone)).toMatchObject({ link: 'live', waiting: 0 })
    expect(server.log.map(({ document }) => document.text)).toEqual(Array.from({ length: 20 }, (_, i) => `note ${i}`))
    expect(texts(phone)).toHaveLength(20)
  })
  it('that the server refuses are set aside with its sentence, and hold nothing up', async () => {
    const { time, server } = setUp()
    const phone = new Phone(server)
    await phone.start()
    server.cut()
    await settled()
    for (const text of ['before', 'forbidden', 'after']) await phone.feed.add(note(text))
    server.reached = true
    await time.run(20)
    expect(server.log.map(({ document }) => document.text)).toEqual(['before', 'after'])
    expect(texts(phone)).toEqual(['before', 'after'])
    await phone.feed.add(note('forbidden'))
    await time.run(5)
    await phone.reload()
    expect(shown(phone).aside).toMatchObject([
      { document: { text: 'forbidden' }, sentence: 'This is not taken.' },
      { document: { text: 'forbidden' }, sentence: 'This is not taken.' },
    ])
    expect(shown(phone).waiting).toBe(0)
  })
  it('go out from a phone that is full since, which keeps no answer', async () => {
    const { time, server } = setUp()
    const phone = new Phone(server)
    await phone.start()
    server.cut()
    await settled()
    for (const text of ['before', 'forbidden', 'after']) await phone.feed.add(note(text))
    phone.store.keepLines = async () => {
      throw new Error('full')
    }
    server.reached = true
    await time.run(40)
    expect(server.log.map(({ document }) => document.text)).toEqual(['before', 'after'])
    expect(shown(phone)).toMatchObject({ link: 'live', waiting: 0 })
  })
  it('that are refused while the screen opens are no part of the day', async () => {
    const { time, server } = setUp()
    const phone = new Phone(server)
    await phone.start()
    server.cut()
    await settled()
    await phone.feed.add(note('forbidden'))
    server.reached = true
    await phone.reload()
    await time.run(5)
    expect(shown(phone).aside).toHaveLength(1)
    expect(texts(phone)).toEqual([])
  })
  it('wait while the server is without its database, and are there within 5 s of its return', async () => {
    const { time, server } = setUp()
    const phone = new Phone(server)
    await phone.start()
    server.away = true
    server.cut()
    server.reached = true
    await phone.feed.add(note('kept'))
    await time.run(60)
    expect(shown(phone)).toMatchObject({ link: 'cut-off', waiting: 1, held: 'The server is being restarted.' })
    server.away = false
    await time.run(5)
    expect(shown(phone)).toMatchObject({ link: 'live', waiting: 0, held: null })
    expect(server.log.map(({ document }) => document.text)).toEqual(['kept'])
  })
  it('wait while the server has no room, and say so', async () => {
    const { time, server } = setUp()
    const phone = new Phone(server)
    await phone.start()
    server.full = true
    await phone.feed.add(note('kept'))
    await time.run(3)
    expect(shown(phone)).toMatchObject({ link: 'catching-up', waiting: 1, held: 'The disk is full.' })
    server.full = false
    await time.run(40)
    expect(shown(phone)).toMatchObject({ link: 'live', waiting: 0, held: null })
  })
  it('wait while the server knows the phone no more, which is said even where nothing waits', async () => {
    const { time, server } = setUp()
    const phone = new Phone(server)
    await phone.start()
    server.shut = true
    server.cut()
    server.reached = true
    await time.run(1)
    expect(shown(phone)).toMatchObject({ link: 'cut-off', waiting: 0, held: 'Open your crew link again.' })
    await phone.feed.add(note('kept'))
    await time.run(1)
    expect(shown(phone)).toMatchObject({ waiting: 1, held: 'Open your crew link again.' })
    server.shut = false
    await time.run(40)
    expect(shown(phone)).toMatchObject({ link: 'live', waiting: 0, held: null })
  })
  it('stay alone on a phone that is let in no more: what the server has goes from it, and comes back with the link', async () => {
    const { time, server } = setUp()
    const phone = new Phone(server)
    await phone.start('cam-1')
    await phone.feed.add(note('sent'))
    await time.run(6)
    expect([phone.store.lines.size, phone.store.day]).toEqual([1, expect.anything()])
    server.shut = true
    server.cut()
    server.reached = true
    await time.run(1)
    await phone.feed.add(note('waits'))
    await time.run(20)
    const { lines, day, person } = phone.store
    expect([[...lines.values()].map(({ document }) => document.text), day, person]).toEqual([['waits'], null, null])
    server.shut = false
    await time.run(40)
    await phone.reload()
    await time.run(6)
    expect(shown(phone)).toMatchObject({ link: 'live', waiting: 0 })
    expect(shown(phone).session.told.notes.map(({ entry }) => entry.text)).toEqual(['sent', 'waits'])
  })
  it('do not keep the name of somebody who was erased meanwhile, whether the board is open or opened later', async () => {
    const { time, server } = setUp()
    const [open, later] = [new Phone(server), new Phone(server)]
    for (const phone of [open, later]) await phone.start('cam-1')
    await open.feed.add(note('ask Maria'))
    await time.run(6)
    later.feed.stop()
    const [line] = server.log
    if (line) line.document = { ...line.document, text: 'ask [erased]' }
    server.opening = { ...server.opening, version: 2, erased: 2 }
    server.tell('day', { version: 2 })
    await time.run(1)
    expect([open.anew, open.store.lines.size]).toEqual([1, 0])
    for (const phone of [open, later]) {
      await phone.reload()
      await time.run(6)
      expect(shown(phone).session.told.notes.map(({ entry }) => entry.text)).toEqual(['ask [erased]'])
      expect(JSON.stringify([...phone.store.lines.values()])).not.toContain('Maria')
    }
  })
  it('are taken by a browser that keeps nothing only when the server has them', async () => {
    const { time, server } = setUp()
    const phone = new Phone(server, { lasting: false })
    await phone.start()
    server.reached = false
    let taken = false
    void phone.feed.add(note('kept')).then(() => {
      taken = true
    })
    await time.run(2)
    expect(taken).toBe(false)
    server.reached = true
    await time.run(10)
    expect(taken).toBe(true)
  })
  it('have their time put right as the board shows it, on a phone whose clock runs wrong', async () => {
    const { time, server } = setUp()
    const phone = new Phone(server, { aheadMs: 300_000 })
    await phone.start()
    await phone.feed.add(reading(41))
    await time.run(1)
    const corrects = server.log[0]?.document.id
    await phone.feed.add({ kind: 'correction', corrects, put: { at: new Date(at(-10)).toISOString() } })
    await time.run(1)
    expect(shown(phone).session.told.probes['hero/core']?.last?.at).toBe(at(-10))
  })
  it('are refused where they say nothing', async () => {
    const { server } = setUp()
    const phone = new Phone(server)
    await phone.start()
    await expect(phone.feed.add({ kind: 'reading', cook: 'hero', sensor: 'core', temp: '46' })).rejects.toThrow()
    expect(shown(phone).waiting).toBe(0)
  })
})

describe('the line to the server', () => {
  it('is dead after 25 s without a beat, and comes back where it was', async () => {
    const { time, server } = setUp()
    const phone = new Phone(server)
    await phone.start()
    server.append(time.ms, [])
    await time.run(24)
    expect(shown(phone).link).toBe('live')
    server.reached = false
    await time.run(2)
    expect(shown(phone).link).toBe('cut-off')
    server.reached = true
    await time.run(10)
    expect(shown(phone).link).toBe('live')
  })
  it('tells the time of the server whatever the phone’s own clock says', async () => {
    const { time, server } = setUp()
    const phone = new Phone(server, { aheadMs: 180_000 })
    await phone.start()
    expect(phone.feed.now()).toBe(time.ms)
    await phone.feed.add(markOf('meat-on'))
    await time.run(1)
    expect(shown(phone).session.told.marks['hero/meat-on']?.at).toBe(at(0))
    expect(Date.parse(server.log[0]?.document.at as string)).toBe(at(3))
  })
  it('brings what others logged, told plainly', async () => {
    const { time, server } = setUp()
    const [one, other] = [new Phone(server), new Phone(server)]
    await one.start()
    await other.start()
    server.cut()
    await settled()
    await one.feed.add(markOf('off-heat'))
    await time.run(40)
    await other.feed.add(markOf('off-heat'))
    server.reached = true
    await time.run(20)
    expect(shown(one).merged).toEqual([
      "2 phones marked 'off heat', 40 s apart; the earlier counts.",
      'Back in touch: 1 entry of this device went out, 1 entry of others came in.',
    ])
    await time.run(20)
    expect(shown(one).merged).toHaveLength(2)
  })
})

describe('alerts on a phone', () => {
  it('sound on time for who is called, and for nobody else', async () => {
    const { time, server } = setUp({ forecast: SLICE })
    const [called, free] = [new Phone(server), new Phone(server)]
    await called.start('cam-1')
    await free.start('stylist')
    await time.run(minutes(14))
    const due = at(40 - 24 - 1.645 * 2)
    expect(called.alarm.sounded[0]?.key).toBe(CALLED)
    expect(Math.abs((called.alarm.sounded[0]?.at ?? 0) - due)).toBeLessThanOrEqual(1000)
    expect(shown(called).sounding?.key).toBe(CALLED)
    expect(free.alarm.keys).not.toContain(CALLED)
  })
  it('sound once, through reconnects and reloads, and with the network gone', async () => {
    const { time, server } = setUp({ forecast: SLICE })
    const phone = new Phone(server)
    await phone.start('cam-1')
    await time.run(minutes(6))
    server.cut()
    await time.run(minutes(8))
    expect(phone.alarm.keys).toEqual([CALLED])
    await phone.reload()
    server.reached = true
    await time.run(60)
    server.cut()
    server.reached = true
    await time.run(60)
    expect(phone.alarm.keys.filter((key) => key === CALLED)).toHaveLength(1)
    expect(shown(phone).sounding?.key).toBe(CALLED)
    await phone.feed.add({ kind: 'call-answer', call: 'call-first-cut', answer: 'coming' })
    expect(shown(phone).sounding).toBeNull()
  })
  it('that came up while nobody looked are shown without a noise', async () => {
    const { time, server } = setUp({ forecast: SLICE })
    await time.run(minutes(15))
    const late = new Phone(server)
    await late.start('cam-1')
    await time.run(5)
    expect(late.alarm.keys).not.toContain(CALLED)
    expect(shown(late).sounding?.key).toBe(CALLED)
  })
  it('have the owner that the server has, on a phone that opens late or comes back', async () => {
    const { time, server } = setUp({
      forecast: { ...SLICE, forecast: forecastOf({ turn: 10, 'first-slice': 300 }, 0) },
    })
    const [watched, back] = [new Phone(server), new Phone(server)]
    await watched.start('stylist')
    await back.start('presenter')
    await time.run(30)
    server.cut()
    await time.run(minutes(12))
    const { now, calls, alerts, load } = shown(watched).session
    const [alert] = Object.values(alerts)
    if (!alert) throw new Error('no alert came up')
    expect(alert.asked.length).toBeGreaterThan(1)
    const late = new Phone(server)
    await late.start('presenter')
    await time.run(5)
    expect(shown(late).session.alerts[alert.id]?.owner).not.toBe(alert.owner)
    const acknowledged = { ...alert, state: 'acknowledged' as const }
    server.opening = {
      ...server.opening,
      state: { now, calls, alerts: { [alert.id]: acknowledged }, load, raised: [] },
    }
    server.reached = true
    const next = new Phone(server)
    await next.start('presenter')
    await time.run(20)
    for (const phone of [next, back])
      expect(shown(phone).session.alerts[alert.id]).toMatchObject({ owner: alert.owner, state: 'acknowledged' })
    expect(next.alarm.keys).toEqual([])
  })
  it('that came up on the server just now sound on a phone that opens, once', async () => {
    const { time, server } = setUp({ forecast: SLICE })
    const first = new Phone(server)
    await first.start('cam-1')
    await time.run(minutes(13))
    const { now, calls, alerts, load } = shown(first).session
    const effect = shown(first).sounding
    if (!effect) throw new Error('nothing sounded')
    server.opening = { ...server.opening, state: { now, calls, alerts, load, raised: [{ effect, at: now - 30_000 }] } }
    const late = new Phone(server)
    await late.start('cam-1')
    await time.run(60)
    expect(late.alarm.keys).toEqual([CALLED])
    expect(shown(late).sounding?.key).toBe(CALLED)
  })
  it('heed marks of the log that come only after the screen is there', async () => {
    const { time, server } = setUp({
      forecast: { ...SLICE, forecast: forecastOf({ turn: -30, 'first-slice': 300 }, 0) },
    })
    server.append(time.ms, [
      { id: '01J8ZK3V5Q0000000000000000', at: '2027-05-15T11:30:00Z', by: { device: 'tablet' }, ...markOf('turn') },
    ])
    const phone = new Phone(server)
    await phone.start('presenter')
    await time.run(5)
    expect(phone.alarm.keys).toEqual([])
  })
  it('are silent while a take rolls, and what sounds is cut short', async () => {
    const { time, server } = setUp({ forecast: SLICE })
    const phone = new Phone(server)
    await phone.start('cam-1')
    await time.run(minutes(6))
    await phone.feed.add({ kind: 'take', shot: 'herbs', take: 1, camera: 'B', roll: 'start' })
    expect(phone.alarm.hushed).toBeGreaterThan(0)
    await time.run(minutes(8))
    expect(phone.alarm.sounded).toMatchObject([{ key: CALLED, channels: 'screen,vibration' }])
  })
})

describe('the forecast on a phone', () => {
  it('is the server’s, and its own only while it is cut off', async () => {
    const plan = { document: {} as never, layout: { start: '', meatOn: {} } as never }
    const { time, server } = setUp({ forecast: SLICE, plan })
    const asked: number[] = []
    const forecaster = {
      warm: () => {},
      stop: () => {},
      ask: async ({ now }: { now: number }) => {
        asked.push(now)
        return forecastOf({ 'first-slice': 100 }, 2)
      },
    }
    const phone = new Phone(server, { forecaster })
    await phone.start('cam-1')
    const slice = () => shown(phone).session.forecast?.expected[0]?.likely
    await time.run(10)
    expect([asked.length, slice(), shown(phone).forecastBy]).toEqual([0, at(40), 'server'])
    server.cut()
    await time.run(30)
    expect([asked.length, slice(), shown(phone).forecastBy]).toEqual([1, at(100), 'this device'])
    await phone.feed.add(reading(40))
    await time.run(90)
    expect(asked.length).toBe(3)
    server.reached = true
    await time.run(20)
    expect([slice(), shown(phone).forecastBy]).toEqual([at(40), 'server'])
    server.tell('forecast', { id: 'f2', at: time.ms, forecast: forecastOf({ 'first-slice': 90 }) })
    expect(slice()).toBe(at(90))
  })
  it('follows a new day', async () => {
    const { time, server } = setUp({ forecast: SLICE })
    const phone = new Phone(server)
    await phone.start()
    server.opening = { ...server.opening, version: 2, day: sessionDayWith({ calls: [] }) }
    server.tell('day', { version: 2 })
    await time.run(1)
    expect(shown(phone).session.day.calls).toEqual([])
  })
})

describe('the tones', () => {
  it('differ in rhythm, in pitch and in how they shake', () => {
    const all = Object.values(TONES)
    const gaps = all.map(({ notes }) => (notes[1]?.atS ?? 0) - (notes[0]?.atS ?? 0))
    const highest = all.map(({ notes }) => Math.max(...notes.map(({ hz }) => hz)))
    for (const values of [gaps, highest, all.map(({ shake }) => shake.join())])
      expect(new Set<number | string>(values).size).toBe(all.length)
    expect(all.every(({ notes }) => notes.every(({ hz }) => hz > 350 && hz < 3000))).toBe(true)
  })
})
