import { readFileSync } from 'node:fs'
import type { APIRequestContext, Page } from 'playwright-core'

/** The shoots that the pages are looked at with: the demo's roast tomorrow, and one that has nobody and no shot yet. */
export interface ReachShoots {
  readonly full: string
  readonly bare: string
}

const DAY_MS = 86_400_000

export async function reachShoots(request: APIRequestContext, address: string, name: string): Promise<ReachShoots> {
  const demo = JSON.parse(readFileSync('prisma/demo/leg-of-lamb.json', 'utf8'))
  const date = new Date(Date.now() + DAY_MS).toISOString().slice(0, 10)
  const { crew: _, ...alone } = JSON.parse(readFileSync('tests/fixtures/shoots/minimal.json', 'utf8'))
  const make = async (which: string, document: object) => {
    const answer = await request.post(`${address}/api/shoots`, { data: { writeId: `${name}-${which}`, document } })
    if (!answer.ok()) throw new Error(await answer.text())
    return (await answer.json()).id as string
  }
  return { full: await make('full', { ...demo, date }), bare: await make('bare', { ...alone, date }) }
}

/** A page or one of its states: where it stands, what must be seen first, and what is done there. */
export interface ReachState {
  readonly name: string
  readonly path: (shoots: ReachShoots) => string
  readonly ready?: string
  readonly act?: (page: Page) => Promise<void>
}

const of = (rest: string) => (shoots: ReachShoots) => `/shoots/${shoots.full}${rest}`
const ofBare = (rest: string) => (shoots: ReachShoots) => `/shoots/${shoots.bare}${rest}`

export const REACH_PAGES: readonly ReachState[] = [
  { name: 'start', path: () => '/' },
  { name: 'new shoot', path: () => '/shoots/new' },
  { name: 'help', path: () => '/help' },
  { name: 'trust', path: () => '/trust' },
  { name: 'join', path: () => '/join' },
  { name: 'components', path: () => '/components', ready: '.ground' },
  { name: 'nothing here', path: () => '/nothing-here' },
  { name: 'plan', path: of('/plan') },
  { name: 'day', path: of('/day'), ready: '.shots' },
  { name: 'calls', path: of('/calls'), ready: 'table' },
  { name: 'card', path: of('/card'), ready: 'h2' },
  { name: 'the card', path: of('/card/sheet'), ready: 'h2' },
  { name: 'web card', path: ({ full }) => `/cards/${full}`, ready: 'h1' },
  { name: 'crew links', path: of('/crew') },
  { name: 'for the edit, rehearsed', path: of('/edit?day=rehearsed'), ready: 'table' },
  { name: 'continuity report, rehearsed', path: of('/edit/continuity?day=rehearsed') },
  { name: 'wrap, rehearsed', path: of('/wrap?day=rehearsed'), ready: 'table' },
  { name: 'board', path: of('/set'), ready: '.thumb' },
  { name: 'laptop view', path: of('/set/desk'), ready: '.desk' },
  { name: 'presenter view', path: of('/set/presenter'), ready: '.pr-what' },
  { name: 'readings', path: of('/set/readings'), ready: 'h1' },
  { name: 'continuity', path: of('/set/continuity'), ready: 'h1' },
  { name: 'rehearsal', path: of('/set/rehearsal'), ready: '.thumb' },
]

const unfold = (page: Page) =>
  page.evaluate(() => {
    for (const one of document.querySelectorAll('details')) one.open = true
  })
const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true }).first().click()

/** The board remembers whose it is. */
async function asPresenter(page: Page) {
  const who = page.getByRole('heading', { name: 'Who are you?' })
  if (await who.isVisible()) await page.getByRole('button', { name: /^presenter/ }).click()
  await page.getByRole('button', { name: 'Reading', exact: true }).waitFor()
}
const boardPage = (name: string): ReachState => ({
  name: `board, ${name}`,
  path: of('/set'),
  ready: '.thumb',
  act: async (page) => {
    await asPresenter(page)
    await page.getByRole('navigation').getByRole('button', { name, exact: true }).click()
  },
})
const sheet = (names: readonly string[]): ReachState => ({
  name: `board, sheet ${names.at(-1)}`,
  path: of('/set'),
  ready: '.thumb',
  act: async (page) => {
    await asPresenter(page)
    for (const name of names) await page.locator('.thumb').getByRole('button', { name, exact: true }).last().click()
    await page.getByRole('dialog').waitFor()
  },
})
const unfolded = (name: string, path: ReachState['path'], ready?: string): ReachState => ({
  name: `${name}, unfolded`,
  path,
  ready,
  act: unfold,
})

/** Beside the pages as they open. */
export const REACH_STATES: readonly ReachState[] = [
  unfolded('new shoot', () => '/shoots/new'),
  {
    name: 'new shoot, a weight without its unit',
    path: () => '/shoots/new',
    act: async (page) => {
      await page.getByLabel('Weight', { exact: true }).fill('3.6')
      await page.locator('.says').first().waitFor()
    },
  },
  unfolded('plan', of('/plan'), 'h2'),
  unfolded('day', of('/day'), '.shots'),
  {
    name: 'day, a shot taken out',
    path: of('/day'),
    ready: '.shots',
    act: async (page) => {
      await page.locator('.shots .more').first().click()
      await press(page, 'Take this shot out')
      await page
        .getByText(/is taken out/)
        .first()
        .waitFor()
    },
  },
  unfolded('calls', of('/calls'), 'table'),
  unfolded('card', of('/card'), 'h2'),
  unfolded('for the edit', of('/edit?day=rehearsed'), 'table'),
  unfolded('wrap', of('/wrap?day=rehearsed'), 'table'),
  ...['plan', 'day', 'calls', 'card', 'wrap', 'edit', 'set'].map((one) => ({
    name: `nobody and no shot yet: ${one}`,
    path: ofBare(`/${one}`),
  })),
  ...['Now', 'Calls', 'Line', 'Food', 'Log'].map(boardPage),
  ...['Reading', 'Mark', 'Take', 'Shot done', 'Late', 'More'].map((one) => sheet([one])),
  ...['Fire', 'Probe', 'Food', 'Hold', 'Meal', 'Note', 'Sound check', 'Camera clock'].map((one) =>
    sheet(['More', one]),
  ),
  {
    name: 'board, an alert',
    path: of('/set/rehearsal'),
    ready: '.thumb',
    act: async (page) => {
      await page.getByLabel('Jump to').selectOption({ index: 3 })
      await page.getByRole('alertdialog').waitFor()
    },
  },
]
