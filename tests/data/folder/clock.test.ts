import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { LiveSession } from '../../../app/live/live-session'
import { backWords, ClockWatch } from '../../../lib/data/clock-watch'
import { RateLimit } from '../../../lib/data/door/rate-limit'
import { keepUp, openOwnerSession, sessionOf } from '../../../lib/data/door/sessions'
import { at } from '../../unit/log/lines'
import { sessionDayWith } from '../../unit/session/made-up-day'

const HOUR_MS = 3_600_000
beforeEach(() => {
  process.env.DATABASE_URL = ''
  process.env.EMBERSLATE_DATA = mkdtempSync(path.join(tmpdir(), 'emberslate-clock-'))
  vi.useFakeTimers({ toFake: ['Date'] })
})
afterEach(() => {
  vi.useRealTimers()
})

describe('a clock that is set back', () => {
  it('is noticed by how much, and told once; one that is put right by seconds, or a computer that slept, is not', () => {
    const watch = new ClockWatch(10 * HOUR_MS, 0)
    expect(watch.look(10 * HOUR_MS + 5000, 5000)).toBe(0)
    expect(watch.look(9 * HOUR_MS + 10_000, 10_000)).toBe(HOUR_MS)
    expect(watch.look(9 * HOUR_MS + 15_000, 15_000)).toBe(0)
    expect(watch.look(9 * HOUR_MS + 19_000, 20_000)).toBe(0)
    expect(watch.look(12 * HOUR_MS, 25_000)).toBe(0)
    expect(backWords(HOUR_MS)).toMatch(/^This computer's clock went back by 1 h\. Nothing is lost/)
  })

  it('keeps nobody waiting who tried before', () => {
    const limit = new RateLimit(2, 1000)
    for (const _ of [1, 2]) limit.take('a', 25 * HOUR_MS)
    expect(limit.take('a', HOUR_MS)).toBe(1)
    expect(limit.take('a', HOUR_MS + 1000)).toBe(0)
  })

  it('signs nobody out, and a session that began under a clock far ahead still changes its secret', async () => {
    vi.setSystemTime(at(0) + 24 * HOUR_MS)
    const { secret } = await openOwnerSession()
    vi.setSystemTime(at(0))
    const session = await sessionOf(secret)
    expect(session).toBeDefined()
    const next = session && (await keepUp(session, secret))
    expect(next?.secret).not.toBe(secret)
    expect(await sessionOf(secret)).toBeDefined()
    expect(await sessionOf(next?.secret ?? '')).toBeDefined()
  })

  it('lives the day under way again by the time that it is: a call comes when it is due, not when the wrong clock said', async () => {
    const live = new LiveSession()
    const day = sessionDayWith()
    const calledAt = (minute: number) => {
      vi.setSystemTime(at(minute))
      return live.state(at(minute))?.calls['call-first-cut']?.called ?? null
    }
    vi.setSystemTime(at(0))
    await live.open('none', 1, day)
    expect(calledAt(61)).toBe(at(61))
    calledAt(1)
    await live.open('none', 1, day)
    expect([calledAt(2), calledAt(59), calledAt(62)]).toEqual([null, null, at(62)])
  })
})
