import { readFileSync } from 'node:fs'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { entryId } from '../../lib/log/entry-id'
import { instant } from '../../lib/units'
import { axeViolations } from './axe'
import { openBrowser } from './browser'
import { readyApp } from './server'

/** The wrap: an invented day to look at, then a day that was logged, and what its cooker taught. */
const app = readyApp()
let browser: Browser
let page: Page
let id: string
const MIN_MS = 60_000
const ON = Date.now() - 200 * MIN_MS
let made = 0
function entry(minute: number, kind: string, rest: Record<string, unknown>) {
  const at = instant(ON + minute * MIN_MS)
  const random = Uint8Array.from({ length: 10 }, (_, i) => (i === 9 ? made++ & 255 : i))
  return {
    id: entryId(at, random),
    at: new Date(at).toISOString(),
    by: { device: 'phone-a' },
    kind,
    cook: 'hero',
    ...rest,
  }
}
const read = (minute: number, sensor: string, tempC: number) =>
  entry(minute, 'reading', { sensor, temp: `${tempC.toFixed(1)} °C` })

beforeAll(async () => {
  browser = await openBrowser()
  page = await browser.newPage({ viewport: { width: 1280, height: 900 } })
  page.setDefaultTimeout(60_000)
  const date = new Date(ON).toISOString().slice(0, 10)
  const document = { ...JSON.parse(readFileSync('tests/fixtures/shoots/pork-loin.json', 'utf8')), date }
  const answer = await page.request.post(`${app.address}/api/shoots`, { data: { writeId: 'wrap-test-1', document } })
  expect(answer.ok()).toBe(true)
  id = (await answer.json()).id
}, 400_000)
afterAll(() => browser?.close())
const open = (name: string) => page.goto(`${app.address}/shoots/${id}/${name}`)

describe.sequential('the wrap', () => {
  it('has nothing to say before anything was marked, and shows the invented day as invented', async () => {
    await open('wrap')
    await page.getByRole('link', { name: 'Look at it with the rehearsed day' }).click()
    await page.getByText('Invented readings: the rehearsed day').waitFor()
    await page.getByRole('heading', { level: 1, name: /(than|as) planned/ }).waitFor()
    await page.getByText('An invented day teaches nothing that is kept.').waitFor()
    expect(await page.getByRole('row', { name: /pull temperature/ }).count()).toBeGreaterThan(0)
    expect(await axeViolations(page)).toEqual([])
  }, 300_000)

  it('keeps what a logged day taught under a name, forgets it and has it back', async () => {
    const minutes = Array.from({ length: 24 }, (_, i) => 5 * i)
    const entries = [
      entry(0, 'mark', { moment: 'meat-on' }),
      ...minutes.map((minute) => read(minute + 1, 'cooker', 172)),
      ...minutes.map((minute) => read(minute + 2, 'core', 6 + 0.45 * minute)),
      entry(121, 'mark', { moment: 'pull' }),
      entry(122, 'mark', { moment: 'off-heat' }),
    ]
    const sent = new Date().toISOString()
    const answer = await page.request.post(`${app.address}/api/shoots/${id}/log`, { data: { sent, entries } })
    expect(answer.status()).toBe(200)
    expect((await answer.json()).entries.filter((one: { became: string }) => one.became !== 'kept')).toEqual([])
    await open('wrap')
    await page.getByRole('button', { name: 'Keep what it taught' }).click()
    await page.getByText('The cooker has no name yet.').waitFor()
    await page.getByLabel('Keep it: what is this cooker called?').fill('The test kettle')
    await page.getByRole('button', { name: 'Keep what it taught' }).click()
    await page.getByText('Kept as “The test kettle”, from one cook.').waitFor()
    await page.getByRole('button', { name: 'Forget this cooker' }).click()
    await page.getByText('“The test kettle” is forgotten').waitFor()
    await page.getByRole('button', { name: 'Put it back' }).click()
    await page.getByText('Kept as “The test kettle”').waitFor()
    expect(await axeViolations(page)).toEqual([])
  }, 300_000)

  it('lets a later plan start from it', async () => {
    await open('plan')
    const which = page.getByLabel('Which one').first()
    await which.selectOption({ label: 'The test kettle, remembered from one cook' })
    await page
      .getByText(/its dial, give or take/)
      .first()
      .waitFor()
    expect(await which.inputValue()).toBe('The test kettle')
  }, 120_000)
})
