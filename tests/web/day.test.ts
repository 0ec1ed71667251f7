import { readFileSync } from 'node:fs'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { axeViolations } from './axe'
import { openBrowser } from './browser'
import { readyApp } from './server'

/** The day edited in its table and on its axis, tried out in the browser as it is typed. */
const app = readyApp()
let browser: Browser
let page: Page
beforeAll(async () => {
  browser = await openBrowser()
  page = await browser.newPage({ viewport: { width: 1280, height: 900 } })
  const document = JSON.parse(readFileSync('tests/fixtures/shoots/pork-loin.json', 'utf8'))
  const answer = await page.request.post(`${app.address}/api/shoots`, { data: { writeId: 'day-test-0001', document } })
  await page.goto(`${app.address}/shoots/${(await answer.json()).id}/day`)
  await page.getByLabel('Title of shot 1', { exact: true }).waitFor({ timeout: 60_000 })
}, 400_000)
afterAll(() => browser?.close())

const field = (label: string) => page.getByLabel(label, { exact: true })
const saved = () => page.getByText('Saved.', { exact: true }).waitFor({ timeout: 30_000 })
const slider = (title: string) => page.getByRole('slider', { name: `Time of ${title}`, exact: true })
const told = (words: string | RegExp) =>
  page.getByRole('status').filter({ hasText: words }).waitFor({ timeout: 20_000 })
const press = (name: string) => page.getByRole('button', { name, exact: true }).click()
const titles = () =>
  page.getByLabel(/^Title of shot/).evaluateAll((all) => all.map((e) => (e as HTMLInputElement).value))
/** Asked by the page itself: its connections are the browser's, and outlive the server's idle time. */
const stored = () =>
  page.evaluate(async () => {
    const address = location.pathname.replace('/shoots', '/api/shoots').replace('/day', '')
    return (await (await fetch(address)).json()).document
  })

describe.sequential('the table', () => {
  it('lays the day out in the browser as something is typed, and says that it is tried out', async () => {
    const scripts = () =>
      page.evaluate(
        () => performance.getEntriesByType('resource').filter(({ name }) => /samples|worker/.test(name)).length,
      )
    expect(await scripts()).toBe(0)
    await field('Setup of Smoke at the vent').focus()
    await expect.poll(scripts, { timeout: 20_000 }).toBeGreaterThan(1)
    await field('Setup of Smoke at the vent').fill('7 min')
    await told('Trying out.')
    await saved()
  }, 60_000)

  it('says under its cell what is wrong', async () => {
    await field('Roll of Smoke at the vent').fill('soon')
    const says = page.locator('.cell.wrong', { has: field('Roll of Smoke at the vent') }).locator('.says')
    await expect.poll(() => says.textContent(), { timeout: 20_000 }).toMatch(/soon/)
    await field('Roll of Smoke at the vent').fill('4 min')
    await expect.poll(() => says.count(), { timeout: 20_000 }).toBe(0)
  }, 60_000)

  it('shows one person’s shots alone', async () => {
    const all = (await titles()).length
    await field('Whose shots').selectOption('stylist')
    const own = await titles()
    expect(own.length).toBeLessThan(all)
    expect(own).toContain('Raw beauty on the board')
    expect(own).not.toContain('Turned over')
    await field('Whose shots').selectOption('')
  })
})

describe.sequential('the heat line', () => {
  const time = () => page.getByRole('slider', { name: 'Time on the heat line' })
  const says = () => time().getAttribute('aria-valuetext')

  it('reads any minute by the keyboard, from moment to moment, near and whole, clean to axe', async () => {
    await press('Read any minute')
    await expect
      .poll(() => time().evaluate((slider) => slider === document.activeElement), { timeout: 20_000 })
      .toBe(true)
    await page.keyboard.press('Home')
    await page.keyboard.press('PageDown')
    expect(await says()).toMatch(/^\d\d:\d\d: (fire lit|oven on)/)
    const before = await says()
    await page.keyboard.press('ArrowRight')
    expect(await says()).not.toBe(before)
    await page.keyboard.press('+')
    await page
      .getByRole('status')
      .filter({ hasText: /^The picture shows \d\d:\d\d to \d\d:\d\d\.$/ })
      .waitFor()
    expect(await axeViolations(page)).toEqual([])
    await page.keyboard.press('Escape')
    await page.getByRole('status').filter({ hasText: 'The picture shows the whole day.' }).waitFor()
  }, 60_000)
})

describe.sequential('the axis', () => {
  it('tries a minute by the arrow keys, lets it go by Escape, and pins it by Enter', async () => {
    const smoke = slider('5 Smoke at the vent')
    // what was typed before is saved at once, and laid out by the server some seconds later
    await expect.poll(() => page.getByText('Trying out.').count(), { timeout: 20_000 }).toBe(0)
    const before = await smoke.getAttribute('aria-valuetext')
    await smoke.focus()
    await smoke.press('Shift+ArrowRight')
    await expect.poll(() => smoke.getAttribute('aria-valuetext')).toMatch(/tried out$/)
    await smoke.press('Escape')
    await expect.poll(() => smoke.getAttribute('aria-valuetext')).toBe(before)
    await smoke.press('Shift+ArrowRight')
    await smoke.press('ArrowRight')
    const wanted = /^\d\d:\d\d/.exec((await smoke.getAttribute('aria-valuetext')) ?? '')?.[0]
    await told('Trying out.')
    await expect.poll(() => smoke.getAttribute('aria-valuetext')).toMatch(/tried out$/)
    await smoke.press('Enter')
    await told(`5 Smoke at the vent is pinned at ${wanted}.`)
    await expect.poll(() => smoke.getAttribute('aria-valuetext'), { timeout: 20_000 }).toMatch(/pinned$/)
    await expect.poll(() => smoke.getAttribute('aria-valuetext'), { timeout: 20_000 }).toMatch(`${wanted} to`)
    await saved()
    expect((await stored()).shots.find(({ id }: { id: string }) => id === 'smoke').pin).toBe(wanted)
  }, 60_000)

  it('moves the whole cook with a moment, drawn by the mouse, and undoes it', async () => {
    const slice = slider('13 First slice with sound')
    await slice.scrollIntoViewIfNeeded()
    const box = await slice.boundingBox()
    if (!box) throw new Error('no handle')
    await page.mouse.move(box.x + box.width / 2, box.y + 22)
    await page.mouse.down()
    await page.mouse.move(box.x + box.width / 2 - 40, box.y + 22, { steps: 4 })
    await page.mouse.up()
    await told(/^The first slice is wished at 1\d:\d\d\./)
    await press('Undo')
    await saved()
    expect((await stored()).day.slice).toEqual({ at: '18:30' })
  }, 60_000)
})

describe.sequential('a shot as a whole', () => {
  it('is split, had twice and taken out, each taken back with one press', async () => {
    const before = await titles()
    await press('More of 5 Smoke at the vent')
    await press('Split in two')
    await expect.poll(titles).toContain('Smoke at the vent, the rest')
    await press('Undo')
    await expect.poll(titles).toEqual(before)
    await press('Duplicate')
    await expect.poll(titles).toContain('Smoke at the vent, again')
    await press('Undo')
    await press('Take this shot out')
    await expect.poll(titles).not.toContain('Smoke at the vent')
    await press('Put it back')
    await expect.poll(titles).toEqual(before)
  }, 60_000)

  it('is taken from what is on offer, or left for good', async () => {
    await page.getByText('8 more on offer').click()
    await press('Take Plated')
    await expect.poll(titles).toContain('Plated')
    await press('Leave The fire is choked')
    await press('Take Light the fire')
    await saved()
    const document = await stored()
    expect(document.shots.map(({ id }: { id: string }) => id)).toContain('plate')
    expect(document.coverage.left).toEqual(['choke'])
    expect(document.tasks.map(({ id }: { id: string }) => id)).toContain('light-fire')
    expect(await page.getByRole('button', { name: 'Take The fire is choked' }).count()).toBe(0)
  }, 60_000)
})

describe.sequential('tasks and crew', () => {
  it('a task is added, written in its cells with what is wrong beneath, taken out and had again', async () => {
    await press('Add a task')
    await page
      .getByLabel(/^Title of task/)
      .last()
      .fill('Baste with butter')
    await field('Start of Baste with butter').fill('meat on')
    await field('Interval of Baste with butter').fill('soon')
    const says = page.locator('.cell.wrong', { has: field('Interval of Baste with butter') }).locator('.says')
    await expect.poll(() => says.textContent(), { timeout: 20_000 }).toMatch(/soon/)
    await field('Interval of Baste with butter').fill('45 min')
    await expect.poll(() => says.count(), { timeout: 20_000 }).toBe(0)
    await press('Take this task out')
    await expect.poll(() => field('Start of Baste with butter').count()).toBe(0)
    await press('Put it back')
    await saved()
    const basted = { title: 'Baste with butter', from: 'meat-on', to: 'pull', takes: '5 min', every: '45 min' }
    expect((await stored()).tasks.at(-1)).toMatchObject(basted)
  }, 60_000)

  it('what was typed a moment ago is taken back by the page’s undo', async () => {
    const first = (await stored()).people[0].id
    await page.getByText('The crew', { exact: true }).click()
    await field('Person 1').fill('hannah')
    await press('Undo the last change')
    await expect.poll(() => field('Person 1').inputValue(), { timeout: 20_000 }).toBe(first)
    expect(await page.getByText(/saved elsewhere/).count()).toBe(0)
  }, 60_000)
})

describe.sequential('on a phone', () => {
  it('nothing runs off the side, everything pressed is as large as a thumb, and axe finds nothing', async () => {
    await page.setViewportSize({ width: 390, height: 844 })
    await page.reload()
    await page.getByLabel('Title of shot 1', { exact: true }).waitFor({ timeout: 60_000 })
    await press('More of 5 Smoke at the vent')
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
    const small = await page
      .locator('section[aria-label="Shots"]')
      // a word pressed within its sentence is as large as the sentence [WCAG 2.2, 2.5.8, "Inline"]
      .locator('button:not(.term), select, input, [role=slider]')
      .filter({ visible: true })
      .evaluateAll((all) =>
        all
          .filter((e) => e.getBoundingClientRect().height < 44)
          .map((e) => e.getAttribute('aria-label') ?? e.textContent),
      )
    expect(small).toEqual([])
    expect(await axeViolations(page)).toEqual([])
  }, 60_000)
})
