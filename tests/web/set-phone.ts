import type { Browser, Page } from 'playwright-core'
import { entryId } from '../../lib/log/entry-id'
import { instant } from '../../lib/units'

/** What the page did to be noticed, each with the page's own time. */
const RECORDER = `
  window.noticed = [];
  Object.defineProperty(Navigator.prototype, 'vibrate', {
    configurable: true,
    value: (shake) => { window.noticed.push({ what: 'shake', at: Date.now(), shake: String(shake) }); return true },
  });
  const start = OscillatorNode.prototype.start;
  OscillatorNode.prototype.start = function (when) {
    window.noticed.push({ what: 'note', at: Date.now(), shake: '' });
    return start.call(this, when);
  };
`
const keptIn = (store: string, what: 'getAll' | 'getAllKeys') => `new Promise((resolve, reject) => {
  const opening = indexedDB.open('emberslate-set');
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const asking = opening.result.transaction('${store}').objectStore('${store}').${what}();
    asking.onsuccess = () => { opening.result.close(); resolve(asking.result) };
    asking.onerror = () => reject(asking.error);
  };
})`

const LAST_MS = 60_000
interface Noticed {
  readonly what: 'shake' | 'note'
  readonly at: number
}
interface KeptLine {
  readonly document: { readonly id: string; readonly kind: string; readonly at: string }
  readonly receipt?: object
}

interface KeptDay {
  readonly state: { readonly forecast: { readonly expected: readonly { moment: string; likely: number }[] } | null }
}

/** A phone on the set: a page with the set board and a clock that can be wound on. */
export class SetPhone {
  /** Noticed before the page was opened again. */
  #before: readonly Noticed[] = []
  readonly #news: string[] = []

  private constructor(
    readonly page: Page,
    readonly board: string,
  ) {}

  /** `session`: the cookie of a sign-in. */
  static async open(browser: Browser, origin: string, shoot: string, session: string): Promise<SetPhone> {
    const context = await browser.newContext({ viewport: { width: 390, height: 844 } })
    await context.addInitScript(RECORDER)
    const [name = '', value = ''] = session.split('=')
    await context.addCookies([{ name, value, url: origin }])
    const page = await context.newPage()
    await page.clock.install({ time: Date.now() })
    const phone = new SetPhone(page, `${origin}/shoots/${shoot}/set`)
    await page.goto(phone.board)
    return phone
  }

  press = (name: string | RegExp) => this.page.getByRole('button', { name }).first().click()
  says = (words: string | RegExp) => this.page.getByText(words).first().waitFor({ timeout: 15_000 })
  /** Of the sheet that lies over the board. */
  choose = (name: string | RegExp) => this.page.getByRole('dialog').getByRole('button', { name }).first().click()
  async noticed(): Promise<readonly Noticed[]> {
    return [...this.#before, ...((await this.page.evaluate('window.noticed')) as readonly Noticed[])]
  }
  /** A long wait is jumped, as by a phone that slept; the last minute of it passes tick by tick. */
  async windTo(at: number): Promise<void> {
    const ahead = async () => at - ((await this.page.evaluate('Date.now()')) as number)
    if ((await ahead()) > 2 * LAST_MS) await this.page.clock.fastForward((await ahead()) - LAST_MS)
    const left = await ahead()
    if (left > 0) await this.page.clock.runFor(left)
  }
  async shakenAfter(at: number): Promise<boolean> {
    return (await this.noticed()).some((one) => one.what === 'shake' && one.at > at)
  }
  /** Every line of news so far; each is ticked off, though an alert may lie over it. */
  async news(): Promise<readonly string[]> {
    const seen = this.page.getByRole('button', { name: 'Seen' })
    for (let i = 0; i < 5 && (await seen.count()) > 0; i++) {
      const line = (await this.page.locator('p.status', { has: seen }).textContent()) ?? ''
      this.#news.push(line.replace(/\s*Seen$/, ''))
      await seen.dispatchEvent('click')
    }
    return this.#news
  }
  async reload(): Promise<void> {
    this.#before = await this.noticed()
    await this.page.reload()
  }
  /** Keys of the alerts that were told here, without the shoot. */
  told = async () =>
    ((await this.page.evaluate(keptIn('fired', 'getAllKeys'))) as [string, string][]).map(([, key]) => key)
  kept = () => this.page.evaluate(keptIn('lines', 'getAll')) as Promise<readonly KeptLine[]>

  async note(text: string): Promise<void> {
    await this.press('More')
    await this.choose('Note')
    await this.page.getByLabel('What to remember').fill(text)
    await this.choose('Save')
  }
  /** When the forecast that was kept last expects a moment. */
  async expects(moment: string): Promise<number | undefined> {
    const [day] = (await this.page.evaluate(keptIn('days', 'getAll'))) as KeptDay[]
    return day?.state.forecast?.expected.find((one) => one.moment === moment)?.likely
  }
  /** When the first entry of a kind was logged. */
  async atOf(kind: string): Promise<number> {
    const line = (await this.kept()).find(({ document }) => document.kind === kind)
    return Date.parse(line?.document.at ?? '')
  }
  /** Settles when the service worker keeps a page. */
  async hasKept(path: string): Promise<void> {
    await this.page.waitForFunction(`caches.match('${path}', { ignoreVary: true }).then(Boolean)`)
  }
}

let made = 0
/** An entry of a phone that speaks to the server without a page. */
export function entryOf(device: string, at: number, kind: string, rest: object) {
  made++
  const chance = Uint8Array.from({ length: 10 }, (_, i) =>
    i < 8 ? device.charCodeAt(i % device.length) : made >> (8 * (9 - i)),
  )
  return { id: entryId(instant(at), chance), at: new Date(at).toISOString(), by: { device }, kind, ...rest }
}
