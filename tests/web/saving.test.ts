import { readFileSync, rmSync } from 'node:fs'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { emptyDataFolder } from '../empty-database'
import { openBrowser } from './browser'
import { type RunningApp, startApp } from './server'

/** What was typed is never lost: not to a second window, not to a server that dies. */
const folder = emptyDataFolder()
let app: RunningApp
let browser: Browser
let page: Page
let plan: string
beforeAll(async () => {
  app = await startApp(folder)
  browser = await openBrowser()
  const context = await browser.newContext()
  page = await context.newPage()
  const porkLoin = JSON.parse(readFileSync('tests/fixtures/shoots/pork-loin.json', 'utf8'))
  const document = { ...porkLoin, shots: undefined }
  const made = await page.request.post(`${app.address}/api/shoots`, { data: { writeId: 'saving-test-1', document } })
  plan = `${app.address}/shoots/${(await made.json()).id}/plan`
}, 400_000)
afterAll(async () => {
  await browser?.close()
  await app?.stop()
  rmSync(folder, { recursive: true, force: true })
})

const weight = (window: Page) => window.getByLabel('Weight', { exact: true })
const says = (window: Page, words: string | RegExp) => window.getByText(words).first().waitFor({ timeout: 30_000 })

describe.sequential('a plan open in two windows', () => {
  it('tells the later one, which may keep its own or take the other', async () => {
    const other = await (await browser.newContext()).newPage()
    await page.goto(plan)
    await other.goto(plan)
    await weight(page).fill('3.4 kg')
    await says(page, /^Saved\.$/)
    await weight(other).fill('3.5 kg')
    await says(other, /saved elsewhere meanwhile/)
    await other.reload()
    await says(other, /saved elsewhere meanwhile/)
    await expect.poll(() => weight(other).inputValue()).toBe('3.5 kg')
    await other.getByRole('button', { name: 'Save mine over it' }).click()
    await says(other, /^Saved\.$/)
    await page.reload()
    await expect.poll(() => weight(page).inputValue()).toBe('3.5 kg')
    await other.close()
  }, 120_000)
})

describe.sequential('a server that dies while somebody types', () => {
  it('has it all once it is back', async () => {
    await page.goto(plan)
    const port = new URL(app.address).port
    await app.stop()
    await weight(page).fill('3.7 kg')
    await says(page, /The server has not answered since/)
    app = await startApp(folder, port)
    await says(page, /^Saved\.$/)
    await page.reload()
    await expect.poll(() => weight(page).inputValue()).toBe('3.7 kg')
  }, 120_000)
})
