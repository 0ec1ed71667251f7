import type { Page } from 'playwright-core'

type Role = 'button' | 'link' | 'tab'
/** What cannot be found by then is not on the screen. */
const FIND_MS = 15_000

/** What a journey cost. */
export interface Told {
  readonly guide: string
  readonly actions: number
  /** What called them away meanwhile: it hangs on the minute, and is no part of the task. */
  readonly alerts: number
  readonly seconds: number
  readonly pages: number
}

/**
 * Somebody who has read nothing. They begin on the first page, find what they need by the name that stands on the screen,
 * and never type an address. Each press, each field filled and each key counts.
 */
export class Newcomer {
  #actions = 0
  #alerts = 0
  #began = performance.now()
  readonly #visited = new Set<string>()
  /** Pages that led nowhere. */
  readonly deadEnds: string[] = []

  constructor(
    readonly page: Page,
    readonly first: string,
  ) {
    page.setDefaultTimeout(FIND_MS)
  }
  /** What lies over the board is answered whenever it comes, by the first thing it offers; the next may stand behind it. */
  answersAlerts = () =>
    this.page.addLocatorHandler(
      this.page.getByRole('alertdialog'),
      async (alert) => {
        await alert.getByRole('button').first().click()
        this.#alerts++
      },
      { noWaitAfter: true },
    )

  /** A new task, from the first page. */
  async begin(): Promise<void> {
    this.#actions = 0
    this.#alerts = 0
    this.#visited.clear()
    this.#began = performance.now()
    await this.page.goto(this.first)
    await this.#look()
  }
  async press(name: string | RegExp, role: Role = 'button'): Promise<void> {
    const exact = typeof name === 'string'
    await this.page.getByRole(role, { name, exact }).filter({ visible: true }).first().click()
    await this.#did()
  }
  follow = (name: string | RegExp) => this.press(name, 'link')
  /** Their own shoot among all, by its day; where there are many, those far ahead are folded. */
  async opens(title: RegExp, day: string): Promise<void> {
    const mine = this.page.locator('tr').filter({ hasText: title }).filter({ hasText: day }).first()
    if (!(await mine.isVisible())) await this.unfold(/^\d+ more ahead$/)
    await mine.locator('a').click()
    await this.#did()
  }
  /** What folds open has no role of its own. */
  async unfold(words: string | RegExp): Promise<void> {
    await this.page.getByText(words, { exact: true }).filter({ visible: true }).first().click()
    await this.#did()
  }
  async fill(label: string, value: string): Promise<void> {
    const field = this.page.getByLabel(label, { exact: true }).filter({ visible: true }).first()
    const isChosen = (await field.evaluate((element) => element.tagName)) === 'SELECT'
    if (isChosen) await field.selectOption({ label: value })
    else await field.fill(value)
    await this.#did()
  }
  sees = (words: string | RegExp) => this.page.getByText(words).filter({ visible: true }).first().waitFor()
  reads = async (words: RegExp) =>
    (await this.page.getByText(words).filter({ visible: true }).first().textContent()) ?? ''
  /** Arrives where the address ends so. */
  async arrives(at: RegExp): Promise<void> {
    await this.page.waitForURL(at)
    await this.#look()
  }
  told(guide: string): Told {
    const seconds = Math.round((performance.now() - this.#began) / 100) / 10
    return { guide, actions: this.#actions, alerts: this.#alerts, seconds, pages: this.#visited.size }
  }

  async #did(): Promise<void> {
    this.#actions++
    await this.#look()
  }
  /** A page without anything to press or follow is a dead end. */
  async #look(): Promise<void> {
    const { pathname } = new URL(this.page.url())
    this.#visited.add(pathname)
    const ways = this.page.locator('a[href]:not([href="#main"]), button:enabled').filter({ visible: true })
    await ways
      .first()
      .waitFor()
      .catch(() => this.deadEnds.push(pathname))
  }
}

/** A line for each guide. */
export const tableOf = (told: readonly Told[]): string =>
  [
    'guide             actions  alerts  seconds  pages',
    ...told.map(({ guide, actions, alerts, seconds, pages }) =>
      [
        guide.padEnd(16),
        String(actions).padStart(8),
        String(alerts).padStart(7),
        seconds.toFixed(1).padStart(8),
        String(pages).padStart(6),
      ].join(' '),
    ),
  ].join('\n')
