import { readFileSync } from 'node:fs'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openBrowser } from './browser'
import { readyApp } from './server'

/** Each wrong thing gets its sentence where it happened, and nothing typed is lost. */
const app = readyApp()
let browser: Browser
let page: Page
beforeAll(async () => {
  browser = await openBrowser()
  page = await browser.newPage({ viewport: { width: 390, height: 844 } })
}, 400_000)
afterAll(() => browser?.close())

/** Without shots: nothing has to be laid out while the fields are tried. */
const good = () => ({ ...JSON.parse(readFileSync('tests/fixtures/shoots/pork-loin.json', 'utf8')), shots: undefined })
const fileOf = (text: string) => ({ name: 'shoot.json', mimeType: 'application/json', buffer: Buffer.from(text) })
async function openFile(text: string): Promise<string> {
  await page.goto(app.address)
  await page.locator('input[type=file]').setInputFiles(fileOf(text))
  const says = page.locator('.says').first()
  await says.waitFor({ timeout: 20_000 })
  return (await says.textContent()) ?? ''
}

describe.sequential('a shoot file that cannot be taken', () => {
  it.each([
    ['broken JSON', () => '{"emberslate": 1,', /line 1|whole JSON/],
    ['5 MB', () => JSON.stringify({ ...good(), title: 'x'.repeat(5_000_000) }), /5\.0 MB/],
    ['an unknown key', () => JSON.stringify({ ...good(), tittle: 'Loin' }), /tittle.*title/s],
    ['a zone that does not exist', () => JSON.stringify({ ...good(), zone: 'Europe/Dublim' }), /Europe\/Dublin/],
    ['a letter that the printed fonts lack', () => JSON.stringify({ ...good(), title: 'Loin 豚' }), /豚/],
  ])('says what is wrong: %s', async (_, text, sentence) => {
    expect(await openFile(text())).toMatch(sentence)
  })

  it('opens a good one', async () => {
    await page.goto(app.address)
    await page.locator('input[type=file]').setInputFiles(fileOf(JSON.stringify(good())))
    await page.waitForURL(/\/plan$/, { timeout: 30_000 })
  }, 60_000)
})

describe.sequential('a wrong field of a saved plan', () => {
  it.each([
    ['Weight', '0.1 kg', '3.6 kg', /kg/],
    ['Weight', '60 kg', '3.6 kg', /kg/],
    ['Middle, when it goes on', '-6 °C', '4 °C', /Thaw it first/],
    ['Pull at', '170 °C', '57 °C', /150 °C/],
    ['Wrap no later than', '25:00', '', /\d\d:\d\d/],
  ])(
    '%s of %s is told under the field, kept over a reload, and not saved',
    async (label, wrong, right, sentence) => {
      const field = page.getByLabel(label, { exact: true })
      const folded = page.locator('details:not([open])', { has: field }).locator('summary')
      if ((await folded.count()) > 0) await folded.click()
      await field.fill(wrong)
      const says = page.locator('.field.wrong', { has: field }).locator('.says')
      await says.waitFor({ timeout: 20_000 })
      expect(await says.textContent()).toMatch(sentence)
      await page.reload()
      await expect.poll(() => field.inputValue(), { timeout: 20_000 }).toBe(wrong)
      await field.fill(right)
      await page.getByText('Saved.', { exact: true }).waitFor({ timeout: 30_000 })
      expect(await page.locator('.field.wrong').count()).toBe(0)
    },
    90_000,
  )
})
