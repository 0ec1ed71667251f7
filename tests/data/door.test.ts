import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { setCertificate } from '../../lib/cli/set-certificate.mjs'
import { mayDo, NOBODY } from '../../lib/data/door/access'
import { calendarPath, grantOfCalendar } from '../../lib/data/door/calendar-keys'
import { carryCode, takeCarried } from '../../lib/data/door/carry'
import { keysOf, makeKey } from '../../lib/data/door/device-keys'
import { expiryFor, linkByCode, linksOf, makeLink, revokeLink } from '../../lib/data/door/links'
import { chooseFirst, isOwners, ownerIsKnown } from '../../lib/data/door/owner'
import { RateLimit } from '../../lib/data/door/rate-limit'
import { endOwnerSessions, keepUp, openOwnerSession, type Session, sessionOf } from '../../lib/data/door/sessions'
import { forgetOld } from '../../lib/data/forget-old'
import { closeAll, freshPlace } from './real-database'

beforeEach(freshPlace)
afterEach(closeAll)
const HOUR = 3_600_000

describe("the owner's passphrase", () => {
  it('is chosen once, has twelve characters, and is known again after a start', async () => {
    await expect(chooseFirst('too short')).rejects.toThrow('at least 12')
    expect(await ownerIsKnown()).toBe(false)
    await chooseFirst('four plain words here')
    await expect(chooseFirst('another one of mine')).rejects.toThrow('chosen already')
    Object.assign(globalThis, { emberslateDoor: undefined, emberslateSmallFiles: undefined })
    expect([await isOwners('four plain words here'), await isOwners('four plain words her')]).toEqual([true, false])
  })
})

describe('a session', () => {
  const known = async (secret: string, now: number) => (await sessionOf(secret, now)) as Session
  it('gets a new secret after six hours; the old one is good for a minute after the new one came back', async () => {
    const { secret: first } = await openOwnerSession()
    const later = Date.now() + 7 * HOUR
    const next = (await keepUp(await known(first, later), first, later))?.secret ?? ''
    expect(next).toHaveLength(22)
    // The phone may not have heard: the old one stays good, and requests beside it get no third.
    expect(await keepUp(await known(first, later + 1000), first, later + 1000)).toBeUndefined()
    await keepUp(await known(next, later + 2000), next, later + 2000)
    expect([await sessionOf(first, later + 50_000), await sessionOf(first, later + 70_000)]).toEqual([
      expect.anything(),
      undefined,
    ])
    expect(await sessionOf(next, later + 70_000)).toBeDefined()
  })
  it('is not lost with an answer on a bad line: who still has the old secret is given another', async () => {
    const { secret: first } = await openOwnerSession()
    const later = Date.now() + 7 * HOUR
    await keepUp(await known(first, later), first, later)
    const again = await keepUp(await known(first, later + HOUR), first, later + HOUR)
    expect(await sessionOf(again?.secret ?? '', later + HOUR)).toBeDefined()
  })
  it('is not lost with many answers: the secret that the phone still has stays good', async () => {
    const { secret: first } = await openOwnerSession()
    const later = Date.now() + 7 * HOUR
    for (const at of [0, 1, 2, 3, 4, 5].map((lost) => later + lost * 70_000))
      await keepUp(await known(first, at), first, at)
    expect(await sessionOf(first, later + HOUR)).toBeDefined()
  })
  it('is renewed once and stays good where a page sends many requests at once', async () => {
    const { secret: first } = await openOwnerSession()
    const later = Date.now() + 7 * HOUR
    const atOnce = async (secret: string, at: number) => {
      const session = await known(secret, at)
      const answers = await Promise.all([1, 2, 3].map(() => keepUp(session, secret, at)))
      return answers.flatMap((one) => one?.secret ?? [])
    }
    const [next = '', ...more] = await atOnce(first, later)
    expect(more).toEqual([])
    await atOnce(next, later + 1000)
    await atOnce(next, later + 90_000)
    expect(await sessionOf(next, later + HOUR)).toBeDefined()
  })
  it("is carried to another line once, and an owner's not at all once the owner's sessions have ended", async () => {
    const [owner, crew] = [await carryCode({ owner: true, links: [] }), await carryCode({ owner: false, links: ['l'] })]
    await endOwnerSessions()
    expect([await takeCarried(owner), (await takeCarried(crew))?.links, await takeCarried(crew)]).toEqual([
      undefined,
      ['l'],
      undefined,
    ])
  })
})

describe('a crew link', () => {
  const wanted = { shoot: 's', person: 'cam', role: 'crew' as const }
  it('opens by its code until it ends, is renewed or is revoked', async () => {
    const old = await makeLink({ ...wanted, expires: Date.now() - 1 })
    expect(await linkByCode(old.code)).toBeUndefined()
    const made = await makeLink({ ...wanted, expires: Date.now() + HOUR })
    expect([made.link.id, await linkByCode(made.code)]).toEqual([old.link.id, made.link])
    const renewed = await makeLink({ ...wanted, expires: Date.now() + HOUR })
    expect([await linkByCode(made.code), await linkByCode(renewed.code)]).toEqual([undefined, renewed.link])
    expect([await revokeLink('other', made.link.id), await revokeLink('s', made.link.id)]).toEqual([false, true])
    expect(await linkByCode(renewed.code)).toBeUndefined()
  })
  it('lets a calendar read the calls of its person by an address of its own, as long as it lasts', async () => {
    const { link } = await makeLink({ ...wanted, expires: Date.now() + HOUR })
    await makeLink({ ...wanted, person: 'cook', expires: Date.now() + HOUR })
    const path = await calendarPath(link)
    expect(path).toMatch(/^\/api\/shoots\/s\/calls\.ics\?key=[\w-]{22}$/)
    const granted = (asked: string) => grantOfCalendar(new URL(asked, 'http://set'))
    expect(await granted(path)).toEqual({ shoot: 's', role: 'calendar', person: 'cam' })
    const key = path.split('?')[1]
    expect(await granted(`/api/shoots/s/log?${key}`)).toBeUndefined()
    expect([await granted(`/api/shoots/t/calls.ics?${key}`), await granted(`${path}A`)]).toEqual([null, null])
    // As many letters as a key has, and more bytes.
    expect(await granted(`/api/shoots/s/calls.ics?key=${'é'.repeat(22)}`)).toBeNull()
    const visitor = { ...NOBODY, grants: [{ shoot: 's', role: 'calendar' as const, person: 'cam' }] }
    const may = (method: string, rest: string) => mayDo(visitor, method, `/api/shoots/s/${rest}`)
    expect([may('GET', 'calls.ics'), may('GET', 'log'), may('POST', 'log')]).toEqual(['in', 'may-not', 'may-not'])
    await revokeLink('s', link.id)
    expect(await granted(path)).toBeNull()
  })
  it('ends two days after the shoot, and is good for two days when the shoot is past', () => {
    const now = Date.parse('2027-01-01T00:00Z')
    expect(new Date(expiryFor('2027-05-15', now)).toISOString()).toBe('2027-05-18T12:00:00.000Z')
    expect(new Date(expiryFor('2026-05-15', now)).toISOString()).toBe('2027-01-03T00:00:00.000Z')
  })
})

describe('what let somebody in', () => {
  it('goes from the files thirty days after its end, and not before', async () => {
    const now = Date.now()
    const ended = async (days: number) => {
      const expires = now - days * 24 * HOUR
      await makeLink({ shoot: 's', person: `p-${days}`, role: 'crew', expires })
      await makeKey('s', `probe-${days}`, expires)
    }
    for (const days of [31, 29, -1]) await ended(days)
    await forgetOld(now)
    expect((await linksOf('s')).map(({ person }) => person)).toEqual(['p-29', 'p--1'])
    expect((await keysOf('s')).map(({ name }) => name)).toEqual(['probe-29', 'probe--1'])
    const { secret } = await openOwnerSession()
    await forgetOld(now + 29 * 24 * HOUR)
    expect(await sessionOf(secret)).toBeDefined()
    await forgetOld(now + 31 * 24 * HOUR)
    expect(await sessionOf(secret)).toBeUndefined()
  })
})

describe('the certificate of the set', () => {
  it('covers names that come at a start; while the set serves no phone has to trust it anew', async () => {
    const data = mkdtempSync(path.join(tmpdir(), 'emberslate-tls-'))
    const first = await setCertificate(data, 'one.example')
    expect(first.newAuthority).toBe(true)
    const serving = await setCertificate(data, 'one.example two.example', true)
    expect([serving.newAuthority, serving.changed, serving.names.includes('two.example')]).toEqual([
      false,
      false,
      false,
    ])
    const anew = await setCertificate(data, 'one.example two.example')
    expect([anew.newAuthority, anew.names.includes('two.example')]).toEqual([true, true])
  })
})

describe('a limit', () => {
  it('lets a burst through, then one in its time, each key by itself', () => {
    const limit = new RateLimit(2, 10_000)
    expect([limit.take('a', 0), limit.take('a', 0), limit.take('a', 0), limit.take('b', 0)]).toEqual([0, 0, 10, 0])
    expect([limit.take('a', 4000), limit.take('a', 10_000)]).toEqual([6, 0])
  })
})
