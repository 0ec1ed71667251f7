import type { Page } from 'playwright-core'
import type { Place, Shot } from './take'

const LAPTOP = { width: 1280, height: 800 }
const PHONE = { width: 390, height: 844 }

const inShoot = (page: Page, { address, shoot }: Place, path: string) =>
  page.goto(`${address}/shoots/${shoot}/${path}`, { waitUntil: 'load' })
const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click()

/** The invented day, standing still ten minutes before a moment. */
async function rehearsed(page: Page, place: Place, view: 'board' | 'desk', moment: RegExp) {
  await inShoot(page, place, `set/rehearsal?view=${view}`)
  await press(page, 'Pause')
  const jump = page.getByLabel('Jump to')
  const names = await jump.locator('option').allTextContents()
  await jump.selectOption({ label: names.find((name) => moment.test(name)) ?? '' })
  await page.getByText('Working out the forecast.').waitFor({ state: 'detached' })
  await page.getByText('Paused.').waitFor()
}

/** The calls that lie over the board are answered, one after the other, until none does. */
async function comes(page: Page) {
  const call = page.getByRole('alertdialog')
  await call.waitFor()
  while (await call.isVisible()) {
    await call.getByRole('button').first().click()
    await page.waitForTimeout(1000)
  }
}

const LOGGED = [
  'time,probe 1,pit',
  '2027-05-15 19:30,16.2,141',
  '2027-05-15 19:40,20.4,148',
  '2027-05-15 19:50,25.1,150',
  '2027-05-15 20:00,30.3,147',
].join('\n')
const SENT = ['34.9 °C', '35.6 °C', '36.2 °C']

/** Every picture of the guides. */
export const SHOTS: readonly Shot[] = [
  {
    name: 'plan-questions',
    ...LAPTOP,
    async go(page, { address }) {
      await page.goto(address)
      await page.getByRole('link', { name: 'New shoot' }).first().click()
      await page.getByRole('heading', { name: /First slice about/ }).waitFor()
      return undefined
    },
  },
  {
    name: 'plan-day',
    width: 1280,
    height: 900,
    async go(page, place) {
      await inShoot(page, place, 'day')
      await page.getByRole('heading', { name: 'Shots', exact: true }).waitFor()
      return undefined
    },
  },
  {
    name: 'run-board',
    ...PHONE,
    async go(page, place) {
      await rehearsed(page, place, 'board', /before turn/)
      await page.getByLabel('As whom').selectOption('cam-1')
      await comes(page)
      return undefined
    },
  },
  {
    name: 'run-reading',
    ...PHONE,
    async go(page, place) {
      await rehearsed(page, place, 'board', /before pull/)
      // Nobody calls the host just now.
      await page.getByLabel('As whom').selectOption('host')
      await press(page, 'Reading')
      await page
        .getByRole('dialog')
        .getByText(/Last was/)
        .waitFor()
      return undefined
    },
  },
  {
    name: 'run-laptop',
    width: 1280,
    height: 900,
    async go(page, place) {
      await rehearsed(page, place, 'desk', /before pull/)
      return undefined
    },
  },
  {
    name: 'card-check',
    width: 900,
    height: 800,
    async go(page, place) {
      await inShoot(page, place, 'card')
      await press(page, 'Add a sentence')
      await page.getByLabel('Words of Your own').fill('Pink from edge to edge, and an hour in all.')
      await page.getByText('contradicted', { exact: true }).first().waitFor()
      const own = page.getByRole('region', { name: 'Your own' })
      await own.getByRole('button', { name: 'Done' }).click()
      return own
    },
  },
  {
    name: 'card-sheet',
    width: 1000,
    height: 860,
    async go(page, place) {
      await inShoot(page, place, 'card/sheet')
      await page.getByRole('heading', { name: 'You need' }).waitFor()
      return undefined
    },
  },
  {
    name: 'logger-file',
    width: 900,
    height: 800,
    async go(page, place) {
      await inShoot(page, place, 'set/readings')
      await page.getByText('Catching up.').waitFor({ state: 'detached' })
      await page.getByText('Or paste its lines').click()
      await page.getByLabel('Lines of the file').fill(LOGGED)
      await press(page, 'Read them')
      await page.getByLabel('What probe 1 is').selectOption({ label: 'core' })
      await page.getByLabel('What pit is').selectOption({ label: 'cooker' })
      await page.getByRole('button', { name: 'Put 8 readings into the log' }).waitFor()
      return page.getByRole('region', { name: 'From a file' })
    },
  },
  {
    name: 'logger-device',
    width: 900,
    height: 560,
    async go(page, place) {
      await send(place)
      await inShoot(page, place, 'set/readings')
      await page.getByText('logger-1', { exact: true }).waitFor()
      await showUsualPort(page)
      const devices = page.getByRole('region', { name: 'Devices and their clocks' })
      await devices.evaluate((element) => element.scrollIntoView({ block: 'start' }))
      return undefined
    },
  },
]

/** As a device does; by the server's clock, which is not this one's. */
async function send({ address, shoot }: Place) {
  const at = Date.parse((await fetch(address)).headers.get('date') ?? '')
  const entries = SENT.map((temp, i) => ({
    id: `${Math.floor(at / 1000)}${String(i + 1).padStart(16, '0')}`,
    at: new Date(at - (SENT.length - i) * 60_000).toISOString(),
    by: { device: 'logger-1' },
    kind: 'reading',
    cook: 'hero',
    sensor: 'core',
    temp,
  }))
  const body = JSON.stringify({ sent: new Date(at).toISOString(), entries })
  const headers = { 'content-type': 'application/json' }
  const answer = await fetch(`${address}/api/shoots/${shoot}/log`, { method: 'POST', headers, body })
  if (!answer.ok) throw new Error(`The readings did not go in: ${answer.status} ${await answer.text()}`)
}

/** The pictures are of an app on some free port; people have it on the usual one. */
const showUsualPort = (page: Page) =>
  page.evaluate(() => {
    for (const code of document.querySelectorAll('pre code'))
      code.textContent = (code.textContent ?? '').replace(/127\.0\.0\.1:\d+/, '127.0.0.1:3000')
  })
