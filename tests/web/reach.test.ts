import type { Browser, CDPSession, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { axeViolations } from './axe'
import { openBrowser } from './browser'
import { cutOrOverlaid, picturesUntold, runsOff, saidWrong } from './reach-checks'
import { REACH_PAGES, type ReachShoots, reachShoots } from './reach-pages'
import { readyApp } from './server'

/** WCAG 2.2 AA as far as a machine sees it, on every page; all states and widths are in tests/proofs/open/reach.ts. */
const app = readyApp()
let browser: Browser
let page: Page
let letters: CDPSession
let shoots: ReachShoots
const titles = new Map<string, string>()

beforeAll(async () => {
  browser = await openBrowser()
  page = await browser.newPage({ viewport: { width: 1280, height: 900 } })
  letters = await page.context().newCDPSession(page)
  shoots = await reachShoots(page.request, app.address, 'reach-test')
  // Once before, so that what is waited for here are the screens.
  await page.request.get(`${app.address}/shoots/${shoots.full}/day`, { timeout: 300_000 })
}, 400_000)
afterAll(() => browser?.close())

/** Of the browser's own setting; a page at 16 px has its text at this size. */
const textPx = (px: number) => letters.send('Page.setFontSizes', { fontSizes: { standard: px, fixed: px } })

/** The page by day on a laptop, with twice the text there, at dusk on a phone, and at 320 px. */
async function faults(): Promise<readonly string[]> {
  await page.emulateMedia({ colorScheme: 'light' })
  await page.setViewportSize({ width: 1280, height: 900 })
  const laptop = [...(await axeViolations(page)), ...(await saidWrong(page)), ...(await picturesUntold(page))]
  await textPx(32)
  const large = [...(await runsOff(page)), ...(await cutOrOverlaid(page))]
  await textPx(16)
  await page.emulateMedia({ colorScheme: 'dark' })
  await page.setViewportSize({ width: 390, height: 844 })
  const phone = await axeViolations(page)
  await page.setViewportSize({ width: 320, height: 640 })
  const narrow = [...(await runsOff(page)), ...(await cutOrOverlaid(page))]
  return [
    ...laptop.map((one) => `1280 px: ${one}`),
    ...large.map((one) => `twice the text: ${one}`),
    ...phone.map((one) => `390 px at dusk: ${one}`),
    ...narrow.map((one) => `320 px: ${one}`),
  ]
}

describe.sequential('every page is for everybody', () => {
  it.each(REACH_PAGES)(
    '$name',
    async ({ name, path, ready }) => {
      await page.goto(app.address + path(shoots), { waitUntil: 'load' })
      if (ready) await page.locator(ready).first().waitFor({ timeout: 30_000 })
      expect(await faults()).toEqual([])
      const title = await page.title()
      expect(titles.get(title), `"${title}" is the title of another page`).toBeUndefined()
      titles.set(title, name)
    },
    60_000,
  )
})
