import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { axeViolations } from './axe'
import { openBrowser } from './browser'
import { readyApp } from './server'

/** The main job as a stranger does it: issue "the main job, end to end", must show 1. */
const app = readyApp()
let browser: Browser
let page: Page
beforeAll(async () => {
  browser = await openBrowser()
  page = await browser.newPage({ viewport: { width: 1280, height: 900 } })
}, 400_000)
afterAll(() => browser?.close())

const MOMENTS = [
  'fire lit',
  'cooker steady',
  'meat on',
  'turn',
  'probe in',
  'pull temperature',
  'vents open',
  'sear',
  'off the heat',
  'carryover peak',
  'first slice',
]

async function fill(label: string, value: string) {
  const field = page.getByLabel(label, { exact: true })
  const isSelect = (await field.evaluate((element) => element.tagName)) === 'SELECT'
  if (isSelect) await field.selectOption({ label: value })
  else await field.fill(value)
}

describe.sequential('a new shoot of a bone-in pork loin on a kettle', () => {
  it('shows the heat line with all eleven moments and their windows while the form is filled in', async () => {
    await page.goto(app.address)
    await page.getByRole('link', { name: 'New shoot' }).click()
    await fill('Cut', 'pork loin, bone in')
    await fill('Weight', '3.6 kg')
    await fill('Cooker', 'kettle, charcoal')
    await fill('Cooker at', '150 °C')
    await fill('Probe goes in', 'at half time, with the turn')
    await fill('Pull at', '57 °C')
    await fill('Off the heat at', '63 °C')
    await fill('First slice at', '18:30')
    await page
      .getByText(/First slice about 18:(29|30|31)/)
      .first()
      .waitFor({ timeout: 30_000 })
    const picture = page
      .getByRole('img', { name: /Heat line/ })
      .filter({ visible: true })
      .first()
    const words = await picture.textContent()
    for (const moment of MOMENTS) expect(words).toContain(moment)
    expect(words?.match(/\d\d:\d\d to \d\d:\d\d/g)?.length ?? 0).toBeGreaterThanOrEqual(8)
    expect(await axeViolations(page)).toEqual([])
  }, 90_000)

  it('says at the field what is wrong, and keeps what was typed', async () => {
    await fill('Weight', '3.6')
    await page.getByText('3.6 what?').waitFor({ timeout: 15_000 })
    expect(await page.getByLabel('Weight', { exact: true }).inputValue()).toBe('3.6')
    await page.reload()
    await page.getByText('3.6 what?').waitFor({ timeout: 15_000 })
    expect(await page.getByLabel('Weight', { exact: true }).inputValue()).toBe('3.6')
    await fill('Weight', '3.6 kg')
    await page.getByText('3.6 what?').waitFor({ state: 'detached', timeout: 15_000 })
  }, 60_000)

  it('lays out the day for a crew of four and the fourteen shots', async () => {
    await page.getByRole('button', { name: 'Save and lay out the day' }).click()
    await page.waitForURL(/\/day$/, { timeout: 60_000 })
    await page.getByRole('heading', { name: 'Shots', exact: true }).waitFor({ timeout: 60_000 })
    expect(await page.locator('tbody tr.moment, tbody tr.free, tbody tr.drop').count()).toBe(14)
    expect(await page.locator('tbody tr.drop').count()).toBeLessThanOrEqual(2)
    expect(await axeViolations(page)).toEqual([])
  }, 120_000)

  it('saves a changed shot and takes the change back', async () => {
    const title = 'Raw loin on the board'
    const first = page.getByLabel('Title of shot 1', { exact: true })
    const before = await first.inputValue()
    await first.fill(title)
    await page.getByText('Saved.', { exact: true }).waitFor({ timeout: 30_000 })
    await page.reload()
    await expect.poll(() => first.inputValue(), { timeout: 30_000 }).toBe(title)
    await page.getByRole('button', { name: 'Undo the last change' }).click()
    await expect.poll(() => first.inputValue(), { timeout: 30_000 }).toBe(before)
  }, 120_000)

  it('gives the calls, and the call sheet as PDF on both papers', async () => {
    await page.getByRole('link', { name: 'Calls', exact: true }).click()
    await page.getByRole('heading', { name: 'Calls that happen once' }).waitFor({ timeout: 60_000 })
    expect(await axeViolations(page)).toEqual([])
    for (const paper of ['A4', 'Letter']) expect(await pdfBytes('call-sheet.pdf', paper)).toBeGreaterThan(10_000)
  }, 120_000)

  it('checks the card, contradicts what is not so, and prints it on both papers', async () => {
    await page.getByRole('link', { name: 'Card', exact: true }).click()
    await page.getByRole('heading', { name: 'Nothing on the card is contradicted.' }).waitFor({ timeout: 60_000 })
    await page.getByRole('button', { name: 'Add a sentence' }).click()
    await page.getByLabel('Words of Your own').fill('Pink from edge to edge, and an hour in all.')
    await page.getByRole('heading', { name: /not true yet/ }).waitFor({ timeout: 30_000 })
    await page.getByText('contradicted', { exact: true }).first().waitFor()
    expect(await axeViolations(page)).toEqual([])
    for (const paper of ['A4', 'Letter']) expect(await pdfBytes('card.pdf', paper)).toBeGreaterThan(10_000)
  }, 120_000)
})

async function pdfBytes(name: string, paper: string): Promise<number> {
  const address = page.url().replace(/\/[a-z]+$/, `/${name}?paper=${paper}`)
  const response = await page.request.get(address)
  expect(response.status()).toBe(200)
  const body = await response.body()
  expect(body.subarray(0, 5).toString()).toBe('%PDF-')
  return body.length
}
