import { readFileSync } from 'node:fs'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openBrowser } from './browser'
import { readyApp } from './server'

/** What was typed is never lost: not to a second window, not to a line that is dead. */
const app = readyApp()
let browser: Browser
let context: BrowserContext
let page: Page
let plan: string
beforeAll(async () => {
  browser = await openBrowser()
  context = await browser.newContext()
  page = await context.newPage()
  const porkLoin = JSON.parse(readFileSync('tests/fixtures/shoots/pork-loin.json', 'utf8'))
  const document = { ...porkLoin, shots: undefined }
  const made = await page.request.post(`${app.address}/api/shoots`, { data: { writeId: 'saving-test-1', document } })
  plan = `${app.address}/shoots/${(await made.json()).id}/plan`
})
afterAll(() => browser?.close())

const weight = (window: Page) => window.getByLabel('Weight', { exact: true })
const says = (window: Page, words: string | RegExp) => window.getByText(words).first().waitFor({ timeout: 30_000 })
const press = (window: Page, name: string) => window.getByRole('button', { name }).click()
const shows = (window: Page, text: string) => expect.poll(() => weight(window).inputValue()).toBe(text)

describe.sequential('a plan open in two windows', () => {
  it('tells the later one, which may take the other, have its own back, or keep its own', async () => {
    const other = await (await browser.newContext()).newPage()
    await page.goto(plan)
    await other.goto(plan)
    await weight(page).fill('3.4 kg')
    await says(page, /^Saved\.$/)
    // What the page asks for after its save must not bring the other's version along.
    await page.waitForLoadState('networkidle')
    await weight(other).fill('3.5 kg')
    await says(other, /saved elsewhere meanwhile/)
    await other.reload()
    await says(other, /saved elsewhere meanwhile/)
    await shows(other, '3.5 kg')
    await press(other, 'Show theirs')
    await shows(other, '3.4 kg')
    await press(other, 'Put it back')
    await shows(other, '3.5 kg')
    await says(other, /^Saved\.$/)
    await weight(page).fill('3.6 kg')
    await says(page, /saved elsewhere meanwhile/)
    await press(page, 'Save mine over it')
    await says(page, /^Saved\.$/)
    await other.reload()
    await shows(other, '3.6 kg')
    await other.close()
  }, 120_000)
})

describe.sequential('a page left before its save was answered', () => {
  it('does not take its own words for somebody else’s', async () => {
    await page.waitForLoadState('networkidle')
    await page.route('**/api/shoots/*', async (route) => {
      await route.fetch()
      await route.abort()
    })
    await weight(page).fill('3.65 kg')
    await says(page, /The server has not answered since/)
    await page.unroute('**/api/shoots/*')
    await page.reload()
    await says(page, /^Saved\.$/)
    await shows(page, '3.65 kg')
    expect(await page.getByText(/saved elsewhere/).count()).toBe(0)
  }, 60_000)
})

describe.sequential('a line that dies while somebody types', () => {
  it('is told with its hour, and has it all once it is back', async () => {
    await page.goto(plan)
    await shows(page, '3.65 kg')
    await context.setOffline(true)
    await weight(page).fill('3.7 kg')
    await says(page, /The server has not answered since \d/)
    await context.setOffline(false)
    await says(page, /^Saved\.$/)
    await page.reload()
    await shows(page, '3.7 kg')
  }, 120_000)
})
