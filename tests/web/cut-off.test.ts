import { rmSync } from 'node:fs'
import { pathToFileURL } from 'node:url'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { SetOpening } from '../../app/set/set-feed'
import type { SessionCall } from '../../lib/session/session-day'
import { emptyDataFolder } from '../empty-database'
import { openBrowser } from './browser'
import { type RunningApp, startApp } from './server'
import { entryOf, SetPhone } from './set-phone'

/** Two hours without a network, on this computer's own address and under a foreign name over plain http. */
const NAME = 'set.test'
const HERE = 'this computer'
const FOREIGN = `plain http under the name ${NAME}`
const PASSPHRASE = 'a walled garden in may'
const HOUR_MS = 3_600_000
const CUT_MS = 2 * HOUR_MS
/** [fsis-safe-minimum] Food stands out for 2 h at most; it is told 20 min before. */
const OUT_TOLD_MS = 100 * 60_000
const TURN_MS = 30 * 60_000
const TURN_TOLD_MS = 3 * 60_000
const QUEUED = 20

const started = { args: ['--crew'], env: { EMBERSLATE_NAMES: NAME, EMBERSLATE_PASSPHRASE: PASSPHRASE } }
const restarted = {
  ...started,
  env: { ...started.env, NODE_OPTIONS: `--import ${pathToFileURL('tests/web/two-hours-later.mjs')}` },
}

const folder = emptyDataFolder()
let app: RunningApp
let browser: Browser
beforeAll(async () => {
  app = await startApp(folder, '0', started)
  browser = await openBrowser([`--host-resolver-rules=MAP ${NAME} 127.0.0.1`])
}, 400_000)
afterAll(async () => {
  await browser?.close()
  await app?.stop()
  rmSync(folder, { recursive: true, force: true })
})

/** A day that has just begun, with everything in one pair of hands. */
function dayFrom(now: number) {
  const call = new Date(now).toISOString()
  const shot = (id: string, moment: string, lid: string) => ({
    id,
    title: `The ${id}`,
    at: { moment },
    cook: 'hero',
    needs: ['camera'],
    place: 'cooker',
    lid,
    priority: 'must',
  })
  return {
    emberslate: 1,
    title: 'Cut off',
    date: call.slice(0, 10),
    zone: 'UTC',
    place: { lat: 53.35, lon: -6.26 },
    weather: { air: '14 °C' },
    cooks: [
      {
        id: 'hero',
        roast: { cut: 'pork-loin-bone-in', mass: '1.6 kg', start: '8 °C' },
        cooker: { kind: 'convection-oven' },
        stages: [
          { do: 'preheat', at: '150 °C' },
          { do: 'roast', at: '150 °C', until: { core: '60 °C' }, turn: { after: '30 min' }, probe: { at: 'start' } },
          { do: 'rest', until: { after: '15 min' }, max: '40 min' },
        ],
      },
    ],
    day: { call: call.slice(11, 16) },
    people: [{ id: 'solo', roles: ['presenter', 'cook', 'camera', 'stylist', 'producer', 'sound'] }],
    cameras: [{ id: 'A' }],
    shots: [shot('turning', 'turn', 'open'), shot('first-cut', 'first-slice', 'any')],
  }
}

/** Speaks to the server as who signed in. */
async function ask(route: string, body?: object): Promise<Response> {
  const headers = { cookie: session, 'content-type': 'application/json' }
  const response = await fetch(
    app.address + route,
    body ? { method: 'POST', headers, body: JSON.stringify(body) } : { headers },
  )
  if (!response.ok) throw new Error(`${route}: ${await response.text()}`)
  return response
}
let session = ''

const PLACES = [
  [HERE, () => app.address],
  [FOREIGN, () => app.address.replace('127.0.0.1', NAME)],
] as const
type Place = (typeof PLACES)[number][0]
interface Out {
  readonly phone: SetPhone
  readonly shoot: string
  /** When each alert is due that follows from the plan and what is logged, whatever the model thinks. */
  due: Readonly<Record<string, number>>
}
const outs = new Map<Place, Out>()
const out = (place: Place) => outs.get(place) as Out
const idsOf = (lines: readonly { readonly id?: unknown }[]) => lines.map(({ id }) => String(id)).sort()

describe.sequential('a phone on a set whose network is cut for two hours', () => {
  it('is opened, and hears the server', async () => {
    const signedIn = await ask('/api/door/sign-in', { passphrase: PASSPHRASE })
    session = signedIn.headers.get('set-cookie')?.split(';')[0] ?? ''
    for (const [place, origin] of PLACES) {
      const made = await ask('/api/shoots', { writeId: `cut-off-${place.length}`, document: dayFrom(Date.now()) })
      const { id } = (await made.json()) as { id: string }
      const phone = await SetPhone.open(browser, origin(), id, session)
      await phone.press('solo')
      await phone.says('saved')
      outs.set(place, { phone, shoot: id, due: {} })
    }
    expect(await out(HERE).phone.page.evaluate('isSecureContext')).toBe(true)
    expect(await out(FOREIGN).phone.page.evaluate('isSecureContext')).toBe(false)
  }, 60_000)

  it.each(PLACES)(
    'keeps twenty entries that wait: on %s',
    async (place) => {
      const { phone, shoot } = out(place)
      const { day } = (await (await ask(`/api/shoots/${shoot}/set-day`)).json()) as SetOpening
      const call = day.calls.find(({ shot }) => shot === 'turning') as SessionCall
      if (place === HERE) await phone.hasKept(`/shoots/${shoot}/card`)
      await phone.page.context().setOffline(true)
      await phone.says('No signal since')
      for (let i = 0; i < QUEUED - 2; i++) await phone.note(`note ${i}`)
      await phone.press('More')
      await phone.choose('Food')
      await phone.choose('Stands out')
      // Last, because it brings the first alert over the board.
      await phone.press('Mark')
      await phone.choose(/^meat (in|on)/)
      await phone.says(`${QUEUED} entries wait`)
      const [meatOn, standsOut] = [await phone.atOf('mark'), await phone.atOf('food')]
      out(place).due = {
        [`standby/${call.id}`]: meatOn + TURN_MS - (call.release + call.setup + call.before) * 1000,
        'alert/turn/hero/1': meatOn + TURN_MS - TURN_TOLD_MS,
        'alert/food-out/hero/1/1': standsOut + OUT_TOLD_MS,
      }
    },
    60_000,
  )

  it('opens again from what it kept, where the browser allows that', async () => {
    const { phone } = out(HERE)
    await phone.reload()
    await phone.says(`${QUEUED} entries wait`)
  }, 30_000)

  it('goes on for two hours', async () => {
    await Promise.all(
      [...outs.values()].map(async ({ phone, due }) => {
        const meatOn = await phone.atOf('mark')
        // Neither the worker nor the disk can be wound on: the first has its say before, and alerts come in real time.
        await expect.poll(() => phone.expects('turn'), { timeout: 20_000 }).toBe(meatOn + TURN_MS)
        for (const at of Object.values(due).sort((a, b) => a - b)) {
          await phone.windTo(at - 1500)
          await expect.poll(() => phone.shakenAfter(at - 1500), { timeout: 10_000 }).toBe(true)
        }
        await phone.windTo(meatOn + CUT_MS)
      }),
    )
  }, 90_000)

  it.each(PLACES)(
    'alerts within a second, once each: on %s',
    async (place) => {
      const { phone, due } = out(place)
      const [told, noticed] = [await phone.told(), await phone.noticed()]
      const shakes = noticed.filter(({ what }) => what === 'shake').map(({ at }) => at)
      expect(told).toEqual(expect.arrayContaining(Object.keys(due)))
      for (const at of Object.values(due))
        expect(Math.min(...shakes.map((one) => Math.abs(one - at)))).toBeLessThan(1000)
      expect(shakes).toHaveLength(told.length)
      await phone.says('The forecast is this phone’s own.')
      expect(await phone.page.getByRole('alertdialog').isVisible()).toBe(true)
    },
    60_000,
  )

  it('finds the server started anew, and what another phone logged meanwhile', async () => {
    const port = new URL(app.address).port
    await app.stop()
    app = await startApp(folder, port, restarted)
    for (const [place] of PLACES) {
      const { phone, shoot } = out(place)
      const marked = (await phone.atOf('mark')) + 40_000
      const entries = Array.from({ length: QUEUED }, (_, i) =>
        i === 0
          ? entryOf('tablet-7', marked, 'mark', { cook: 'hero', moment: 'meat-on' })
          : entryOf('tablet-7', marked + i * 60_000, 'note', { text: `tablet ${i}` }),
      )
      await ask(`/api/shoots/${shoot}/log`, { sent: new Date(Date.now() + CUT_MS).toISOString(), entries })
    }
  }, 60_000)

  it.each(PLACES)(
    'merges both, and loses and doubles nothing: on %s',
    async (place) => {
      const { phone, shoot } = out(place)
      const before = await phone.told()
      await phone.page.context().setOffline(false)
      // How many of the others' came with the first piece is the line's affair; that all of them did is checked below.
      const back = new RegExp(
        `^Back in touch: ${QUEUED} entries of this device went out, \\d+ entr(y|ies) of others came in`,
      )
      // The news goes again, so it is looked for at once and not after the last entry is out.
      const heard = expect
        .poll(async () => (await phone.news()).some((line) => back.test(line)), { timeout: 30_000 })
        .toBe(true)
      await Promise.all([heard, phone.says('saved')])
      const twice = "2 phones marked 'meat on', 40 s apart; the earlier counts."
      await expect.poll(() => phone.news(), { timeout: 15_000 }).toContain(twice)
      const log = (await (await ask(`/api/shoots/${shoot}/log`)).text())
        .trim()
        .split('\n')
        .map((line) => JSON.parse(line))
      await expect.poll(async () => (await phone.kept()).length, { timeout: 15_000 }).toBe(2 * QUEUED)
      const kept = await phone.kept()
      expect(log).toHaveLength(2 * QUEUED)
      expect(new Set(idsOf(log)).size).toBe(2 * QUEUED)
      expect(idsOf(kept.map(({ document }) => document))).toEqual(idsOf(log))
      expect(kept.filter(({ receipt }) => !receipt)).toEqual([])
      expect((await phone.told()).filter((key) => before.includes(key))).toEqual(before)
      expect(await phone.page.getByText('No signal since').count()).toBe(0)
    },
    60_000,
  )
})
