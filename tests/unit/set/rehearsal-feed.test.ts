import { describe, expect, it } from 'vitest'
import { before, playedDay } from '../../../app/set/rehearsal/played-day'
import { RehearsalFeed } from '../../../app/set/rehearsal/rehearsal-feed'
import type { SetOpening } from '../../../app/set/set-feed'
import { minutes } from '../../../lib/units'
import { at, mark, reading } from '../log/lines'
import { call, forecastOf, sessionDayWith } from '../session/made-up-day'
import { MadeUpTime } from './made-up-set'

const SLICE = call('first-cut', 'first-slice')
const day = playedDay([
  mark(0, 'meat-on').document,
  ...Array.from({ length: 12 }, (_, i) => reading(2 + 5 * i, 20 + i).document),
  mark(62, 'probe-in').document,
  mark(90, 'first-slice').document,
])
if (!day) throw new Error('no day')
const opening: SetOpening = {
  version: 1,
  day: sessionDayWith({ calls: [SLICE] }),
  forecast: null,
  people: [],
  now: at(999),
  plan: { document: {}, layout: { start: '', meatOn: {} } },
}

async function playing(person: string | null = null, from = opening) {
  const time = new MadeUpTime(at(5000))
  const sounds: string[] = []
  const device = {
    clock: time.clock(),
    alarm: { sound: ({ key }: { key: string }) => void sounds.push(key), notify: () => {}, hush: () => {} },
    forecaster: {
      warm: () => {},
      ask: async () => forecastOf({ 'first-slice': 90 }, 1),
      stop: () => {},
    },
    chance: (bytes: number) => Uint8Array.from({ length: bytes }, (_, i) => (i * 37 + time.ms) & 255),
  }
  const feed = new RehearsalFeed(device, {
    day: day as NonNullable<typeof day>,
    opening: from,
    crewSeed: 1,
    person,
    speed: 30,
  })
  feed.start()
  await time.run(1)
  return { feed, time, sounds }
}
const playedMin = (feed: RehearsalFeed) => (feed.now() - at(0)) / 60_000
const marked = (feed: RehearsalFeed) => Object.keys(feed.snapshot().session.told.marks)

describe('a day that is played', () => {
  it('opens ten minutes before the probe goes in, with the log as it stood, and runs at its speed', async () => {
    const { feed, time } = await playing()
    expect(playedMin(feed)).toBeGreaterThanOrEqual(52)
    expect(playedMin(feed)).toBeLessThan(53)
    expect(marked(feed)).toEqual(['hero/meat-on'])
    await time.run(20)
    expect(playedMin(feed)).toBeCloseTo(62.3, 0)
    expect(marked(feed)).toEqual(['hero/meat-on', 'hero/probe-in'])
    feed.pause(true)
    const stood = feed.now()
    await time.run(10)
    expect(feed.now()).toBe(stood)
  })
  it('knows nothing of the real day, whose calls may roll and whose clock may be months ahead', async () => {
    const rolls = { state: 'roll', called: at(1), why: null, announced: null, likely: at(2), moves: 0 } as const
    const state = { now: at(60 * 24 * 90), calls: { [SLICE.id]: rolls }, alerts: {}, load: [], raised: [] }
    const { feed, time } = await playing('cam-1', { ...opening, state })
    expect(playedMin(feed)).toBeLessThan(53)
    for (let i = 0; i < 60 && !feed.snapshot().sounding; i++) await time.run(1)
    expect(feed.snapshot().sounding?.tone).toBe('standby')
  })
  it('has a crew that answers its calls', async () => {
    const { feed, time } = await playing()
    await time.run(30)
    const { answers } = feed.snapshot().session.told
    expect(answers[SLICE.id]?.map(({ person, answer }) => `${person} ${answer}`)).toContain('cam-1 coming')
  })
  it('slows down for whom it asks, and goes on when nobody answers', async () => {
    const { feed, time, sounds } = await playing('cam-1')
    for (let i = 0; i < 60 && feed.playing().state !== 'waits'; i++) await time.run(1)
    expect(sounds).toEqual(['standby/call-first-cut'])
    const asked = playedMin(feed)
    await time.run(10)
    expect(playedMin(feed) - asked).toBeLessThan(0.3)
    await time.run(10)
    expect(feed.playing().state).toBe('plays')
    expect(playedMin(feed) - asked).toBeGreaterThan(2)
    expect(feed.snapshot().sounding).toBeNull()
  })
  it('takes back what was added after the time it goes back to', async () => {
    const { feed, time } = await playing()
    await time.run(10)
    await feed.add({ kind: 'mark', cook: 'hero', moment: 'turn' }, minutes(1))
    expect(marked(feed)).toContain('hero/turn')
    feed.jump(before(at(60), at(0)))
    await time.run(1)
    expect(marked(feed)).toEqual(['hero/meat-on'])
    feed.jump(at(80))
    await time.run(1)
    expect(playedMin(feed)).toBeGreaterThanOrEqual(80)
    expect(marked(feed)).toEqual(['hero/meat-on', 'hero/probe-in'])
  })
})
