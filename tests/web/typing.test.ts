import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openBrowser } from './browser'
import { readyApp } from './server'

const PATIENT = { timeout: 60_000 }
const app = readyApp()
let browser: Browser

beforeAll(async () => {
  browser = await openBrowser()
}, 400_000)
afterAll(() => browser?.close())

/** The plan's page with every question to the server's own preview. */
async function typingPage(prepare: (page: Page) => Promise<void> = async () => {}) {
  const page = await (await browser.newContext()).newPage()
  const asked: string[] = []
  page.on('request', (request) => {
    if (request.url().endsWith('/api/preview')) asked.push(request.method())
  })
  await prepare(page)
  await page.goto(`${app.address}/shoots/new`)
  return { page, asked }
}

const withoutWorkers = async (page: Page) => void (await page.addInitScript('delete window.Worker'))

/** Types a mass and waits for the picture to follow. */
async function typeMass(page: Page, mass: string) {
  const before = await page.textContent('h1')
  await page
    .getByLabel(/mass|weight/i)
    .first()
    .fill(mass)
  await page.waitForFunction((told) => document.querySelector('h1')?.textContent !== told, before, PATIENT)
}

describe('what is typed', () => {
  it('is worked out in the browser by the fast kernel, and the server is not asked', PATIENT, async () => {
    const { page, asked } = await typingPage()
    await typeMass(page, '5 kg')
    expect(asked).toEqual([])
    expect(await page.getAttribute('[data-kernel]', 'data-kernel')).toBe('simd')
    expect(page.workers().length).toBeGreaterThan(0)
  })

  it('is worked out by the server where the browser has no workers', PATIENT, async () => {
    const { page, asked } = await typingPage(withoutWorkers)
    await typeMass(page, '5 kg')
    expect(asked).toEqual(['POST'])
  })

  it('comes to the same words either way', PATIENT, async () => {
    const here = await typingPage()
    const there = await typingPage(withoutWorkers)
    for (const { page } of [here, there]) await typeMass(page, '4.4 kg')
    expect(await here.page.textContent('h1')).toBe(await there.page.textContent('h1'))
    expect([here.asked, there.asked]).toEqual([[], ['POST']])
  })
})
