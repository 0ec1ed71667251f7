import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { openBrowser } from './browser'
import { readyApp } from './server'

/** From the start page to the printed card without a pointer [WCAG 2.2, 2.1.1, 2.1.2]; the presses are counted and printed. */
const app = readyApp()
const PATIENT = { timeout: 60_000 }
/** More is no way, even where every cell of a day is passed. */
const MOST_TABS = 400
let browser: Browser
let page: Page
let presses = 0
beforeAll(async () => {
  browser = await openBrowser()
  page = await browser.newPage({ viewport: { width: 1280, height: 900 } })
  page.setDefaultTimeout(PATIENT.timeout)
}, 400_000)
afterAll(() => browser?.close())

async function press(key: string) {
  presses++
  await page.keyboard.press(key)
}
async function type(text: string) {
  presses += text.length
  await page.keyboard.type(text)
}
/** What a screen reader would call what has the focus, in short. */
const nameHere = () =>
  page.evaluate(() => {
    const one = document.activeElement
    if (!one || one === document.body) return ''
    const label = (one as HTMLInputElement).labels?.[0]?.textContent
    return (one.getAttribute('aria-label') ?? label ?? one.textContent ?? '').trim()
  })
async function tabTo(name: string, key = 'Tab') {
  for (let i = 0; i < MOST_TABS; i++) {
    await press(key)
    if ((await nameHere()) === name) return
  }
  throw new Error(`${key} does not come to "${name}".`)
}
const heading = (name: string | RegExp) => page.getByRole('heading', { name, exact: true }).first().waitFor()

it('a shoot is planned, laid out, changed and its card printed with the keyboard alone', async () => {
  const parts: string[] = []
  const told = (part: string) =>
    parts.push(`${part} ${presses - parts.reduce((n, one) => n + Number(one.split(' ').at(-1)), 0)}`)
  await page.goto(app.address)
  await tabTo('New shoot')
  await press('Enter')
  await page.waitForURL(/\/shoots\/new/)
  await page.getByLabel('Weight', { exact: true }).waitFor()
  told('start')

  await tabTo('Cut')
  await type('pork loin')
  await tabTo('Weight')
  await type('3.6 kg')
  await tabTo('Thickness at the thickest')
  await type('12 cm')
  await tabTo('Cooker')
  await type('kettle')
  await tabTo('How done')
  await press('ArrowDown')
  await tabTo('First slice at')
  await type('18:30')
  await page
    .getByText(/First slice about 18:(29|30|31)/)
    .filter({ visible: true })
    .first()
    .waitFor()
  await tabTo('Save and lay out the day')
  await press('Enter')
  told('six questions')

  await page.waitForURL(/\/day$/)
  await heading('Shots')
  await tabTo('Add a shot')
  await press('Enter')
  await expect.poll(nameHere, PATIENT).toMatch(/^Title of shot \d+$/)
  await type('Herbs in the sun')
  await page.getByText('Saved.', { exact: true }).filter({ visible: true }).first().waitFor()
  told('a shot')

  await tabTo('Card', 'Shift+Tab')
  await press('Enter')
  await page.waitForURL(/\/card$/)
  await page.getByRole('link', { name: 'PDF, A4' }).first().waitFor()
  await tabTo('PDF, A4')
  const printed = page.waitForResponse(/card\.pdf\?paper=A4/)
  await press('Enter')
  const answer = await printed
  expect([answer.status(), answer.headers()['content-type']]).toEqual([200, 'application/pdf'])
  told('card')
  console.log(`Keys from the start page to the printed card: ${presses} (${parts.join(', ')}).`)
}, 180_000)
