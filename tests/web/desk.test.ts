import { readFileSync } from 'node:fs'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { axeViolations } from './axe'
import { openBrowser } from './browser'
import { readyApp } from './server'

/** The day and the card as they are worked on: what is typed keeps its place, what does not fit is told by name. */
const app = readyApp()
const PORK_LOIN = JSON.parse(readFileSync('tests/fixtures/shoots/pork-loin.json', 'utf8'))
let browser: Browser
let page: Page
let shoot: string
let made = 0
beforeAll(async () => {
  browser = await openBrowser()
  page = await browser.newPage({ viewport: { width: 1280, height: 900 } })
  // Three shots, so that hardly anything has to be laid out anew with each word typed.
  shoot = await shootOf({ shots: PORK_LOIN.shots.slice(0, 3) })
}, 400_000)
afterAll(() => browser?.close())

async function shootOf(changes: object): Promise<string> {
  const document = { ...PORK_LOIN, ...changes }
  const data = { writeId: `desk-test-${++made}`, document }
  const answer = await page.request.post(`${app.address}/api/shoots`, { data })
  expect(answer.ok()).toBe(true)
  return `${app.address}/shoots/${(await answer.json()).id}`
}
const field = (label: string) => page.getByLabel(label, { exact: true })
const saved = () => page.getByText('Saved.', { exact: true }).waitFor({ timeout: 30_000 })
const cellFault = (label: string) => page.locator('.cell.wrong', { has: field(label) }).locator('.says')
const faultOf = (label: string) => page.locator('.field.wrong', { has: field(label) }).locator('.says')

describe.sequential('a shot added to the day', () => {
  it('may stand in each of the five forms', async () => {
    await page.goto(`${shoot}/day`)
    await page.getByRole('button', { name: 'Add a shot' }).click()
    const put = (form: string) =>
      page.waitForResponse((r) => r.request().method() === 'PUT' && r.request().postData()?.includes(form) === true)
    for (const form of ['at', 'between', 'locked', 'light', 'free']) {
      const answer = put(`"${form}":`)
      await field('When').selectOption(form)
      expect((await answer).status(), form).toBe(200)
    }
  }, 60_000)

  it('says under its own field what is wrong with it', async () => {
    await field('Setup of New shot').fill('5')
    await expect.poll(() => cellFault('Setup of New shot').textContent(), { timeout: 20_000 }).toMatch(/5 what\?/)
    expect(await axeViolations(page)).toEqual([])
    await field('Setup of New shot').fill('5 min')
    await saved()
  }, 60_000)
})

describe.sequential('a crew too small', () => {
  it('is told shot by shot, by name', async () => {
    const people = [
      { id: 'host', roles: ['presenter', 'cook', 'stylist'] },
      { id: 'operator', roles: ['camera', 'sound'] },
    ]
    await page.goto(`${await shootOf({ people })}/day`)
    const panel = page.getByRole('region', { name: 'Does not fit' })
    await panel
      .getByRole('heading', { name: /(Probe goes in, close|Turned over), a must/ })
      .waitFor({ timeout: 60_000 })
    expect(await panel.textContent()).toMatch(/A second operator with a camera/)
    const before = await panel.getByRole('heading', { level: 3 }).count()
    await panel
      .getByRole('button', { name: /^Do so: A second operator/ })
      .first()
      .click()
    await expect.poll(() => panel.getByRole('heading', { level: 3 }).count(), { timeout: 30_000 }).toBeLessThan(before)
    await saved()
  }, 90_000)
})

describe.sequential('folded fields', () => {
  it('open for a fault and stay open when it is put right', async () => {
    await page.goto(`${shoot}/plan`)
    await page.locator('summary', { hasText: 'place and weather' }).click()
    await field('Latitude').fill('north')
    await expect.poll(() => faultOf('Latitude').textContent(), { timeout: 20_000 }).toMatch(/latitude/)
    await page.reload()
    await faultOf('Latitude').waitFor({ timeout: 20_000 })
    await field('Latitude').fill('53.35')
    await saved()
    expect(await field('Latitude').isVisible()).toBe(true)
  }, 90_000)
})

describe.sequential('a draft kept by an older version', () => {
  it('is put by, and the page stands', async () => {
    const key = `emberslate-draft-${shoot.split('/').at(-1)}`
    const old = '{"base":1,"document":{"emberslate":1,"cooks":[{"id":"a","stages":"none"}]}}'
    await page.evaluate(([key, old]) => localStorage.setItem(key, old), [key, old] as const)
    await page.goto(`${shoot}/plan`)
    await saved()
    // "Saved." is in the page before its script has looked at what the browser keeps.
    const putBy = () => page.evaluate((key) => localStorage.getItem(`${key}-unread`), key)
    await expect.poll(putBy, { timeout: 20_000 }).toBe(old)
  }, 60_000)
})

describe.sequential('a sentence of the card', () => {
  it('keeps its place and its editor while its words are taken out', async () => {
    await page.goto(`${shoot}/card`)
    const rest = page.getByRole('region', { name: 'Rest', exact: true })
    await rest.getByRole('button', { name: 'Change the words' }).click()
    await page.getByLabel('Words of Rest').fill('')
    await rest.getByText('Left out of the card.').waitFor()
    await saved()
    await page.keyboard.type('Rest it under a cloth.')
    await saved()
    await rest.locator('.said', { hasText: 'Rest it under a cloth.' }).waitFor({ timeout: 30_000 })
  }, 60_000)

  it('says under its words which letter cannot be printed', async () => {
    await page.getByLabel('Words of Rest').fill('Rest it 豚.')
    await page.getByRole('region', { name: 'Rest' }).locator('.says', { hasText: '豚' }).waitFor({ timeout: 20_000 })
    expect(await axeViolations(page)).toEqual([])
  }, 60_000)
})

describe.sequential('a printed page', () => {
  it('is white, and shows nothing to press', async () => {
    await page.emulateMedia({ media: 'print' })
    for (const path of ['card/sheet', 'calls']) {
      await page.goto(`${shoot}/${path}`)
      await page.getByRole('heading', { level: 1 }).waitFor({ timeout: 60_000 })
      expect(await page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe('rgb(255, 255, 255)')
      // A word that explains itself is printed as a word.
      const words = page.locator('button.term')
      const lines = await words.evaluateAll((all) => all.map((one) => getComputedStyle(one).textDecorationLine))
      expect(lines.filter((line) => line !== 'none')).toEqual([])
      const pressed = page.getByRole('link', { name: 'PDF' }).or(page.locator('button:not(.term)'))
      expect(await pressed.filter({ visible: true }).count()).toBe(0)
    }
  }, 90_000)
})
