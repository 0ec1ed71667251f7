import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { axeViolations } from './axe'
import { openBrowser } from './browser'
import { readyApp } from './server'

/** The card as its reader at home has it: issue "the card and the wrap", must show 2 and 4. */
const app = readyApp()
let browser: Browser
let page: Page
let card: string
beforeAll(async () => {
  browser = await openBrowser()
  page = await browser.newPage({ viewport: { width: 1280, height: 900 } })
  const { shoots } = await (await fetch(`${app.address}/api/shoots`)).json()
  const demo = shoots.find((one: { title: string }) => one.title === 'Leg of lamb at the walled garden')
  card = `${app.address}/cards/${demo.id}`
}, 400_000)
afterAll(() => browser?.close())

async function workOut(thickness: string) {
  await page.getByLabel('Thickness').fill(thickness)
  await page.getByRole('button', { name: 'Work out my times' }).click()
}
const pullLine = () => page.getByText(/^Pull it when the probe reads/)
/** What pages are kept, and all that they loaded, once that no longer grows. */
const keptWhole = () =>
  page.waitForFunction(
    async () => {
      const cache = await caches.open('emberslate-1')
      const count = (await cache.keys()).length
      // Between two looks only the page itself remembers.
      const memory = window as unknown as { keptBefore?: number }
      const same = memory.keptBefore === count
      memory.keptBefore = count
      return same && (await cache.match(location.pathname)) !== undefined
    },
    null,
    { polling: 1500, timeout: 60_000 },
  )

describe.sequential('the card that readers read', () => {
  it('has times for other sizes, and gives the reader’s own roast the same ones', async () => {
    await page.goto(card)
    const sizes = page.getByRole('region', { name: 'Yours is another size?' })
    await sizes.waitFor({ timeout: 60_000 })
    const cell = await sizes
      .getByRole('row', { name: /^11 cm/ })
      .getByRole('cell')
      .first()
      .textContent()
    await workOut('11')
    await page.getByText('11 what? Write "11 cm"').waitFor()
    await workOut('11 cm')
    await pullLine().waitFor({ timeout: 60_000 })
    expect(await pullLine().textContent()).toContain(cell)
  }, 120_000)

  it('has nothing for axe to find, and loses nothing at twice the text or on a narrow phone', async () => {
    expect(await axeViolations(page)).toEqual([])
    for (const width of [640, 320]) {
      await page.setViewportSize({ width, height: 800 })
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width)
    }
  }, 60_000)

  it('opens again without a network, and still works out a roast', async () => {
    await keptWhole()
    await page.context().setOffline(true)
    await page.reload()
    await workOut('13 cm')
    await pullLine().waitFor({ timeout: 60_000 })
    await page.context().setOffline(false)
  }, 150_000)

  it('prints as one sheet, with nothing to press', async () => {
    await page.reload()
    await page.getByRole('region', { name: 'Yours is another size?' }).waitFor()
    const pdf = await page.pdf({ format: 'Letter' })
    expect(pdf.toString('latin1').match(/\/Type \/Page\b/g)).toHaveLength(1)
    await page.emulateMedia({ media: 'print' })
    expect(await page.getByRole('button').filter({ visible: true }).count()).toBe(0)
  }, 60_000)
})
