import type { Browser, Page } from 'playwright-core'

/** What a page costs whoever opens it on a slow phone. */
export interface PageFigures {
  /** All that came over the line, as it was sent, until the page was quiet. */
  readonly transferredKb: number
  /** Every layout shift that nobody's press caused, added up: never less than the browser's own figure. */
  readonly shift: number
  readonly largestMs: number
  readonly longestTaskMs: number
  /** The slowest of a few presses, to the next picture; null where the page has nothing to press. */
  readonly pressMs: number | null
}
export interface Device {
  readonly width: number
  readonly height: number
  /** How many times slower the processor is made. */
  readonly slowed: number
  readonly line?: typeof FAST_4G
}

/** "Fast 4G" of Chromium's developer tools: 9 and 1.5 Mb/s, 60 ms, with its factors of 0.9 and 2.75 [devtools-frontend, front_end/core/sdk/NetworkManager.ts]. */
export const FAST_4G = {
  downloadThroughput: ((9 * 1000 * 1000) / 8) * 0.9,
  uploadThroughput: ((1.5 * 1000 * 1000) / 8) * 0.9,
  latency: 60 * 2.75,
}
export const SLOW_PHONE: Device = { width: 390, height: 844, slowed: 4, line: FAST_4G }
/** Layout is the same on any processor. */
export const PHONE: Device = { width: 390, height: 844, slowed: 1 }

interface Seen {
  shift: number
  largestMs: number
  longestTaskMs: number
  pressMs: number
}
declare global {
  interface Window {
    seenFigures: Seen
  }
}

/** Runs in the page before anything of its own. */
function watch() {
  const seen: Seen = { shift: 0, largestMs: 0, longestTaskMs: 0, pressMs: 0 }
  window.seenFigures = seen
  const each = (type: string, note: (entry: PerformanceEntry) => void, more: object = {}) =>
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) note(entry)
    }).observe({ type, buffered: true, ...more })
  each('layout-shift', (entry) => {
    const { value, hadRecentInput } = entry as PerformanceEntry & { value: number; hadRecentInput: boolean }
    if (!hadRecentInput) seen.shift += value
  })
  each('largest-contentful-paint', (entry) => {
    seen.largestMs = entry.startTime
  })
  each('longtask', (entry) => {
    seen.longestTaskMs = Math.max(seen.longestTaskMs, entry.duration)
  })
  const pressed = (entry: PerformanceEntry) => {
    const { interactionId, duration } = entry as PerformanceEntry & { interactionId: number }
    if (interactionId > 0) seen.pressMs = Math.max(seen.pressMs, duration)
  }
  each('event', pressed, { durationThreshold: 16 })
}

/** A browser that has never been here, as slow as the device. */
export async function openSlowed(browser: Browser, { width, height, slowed, line }: Device) {
  const context = await browser.newContext({ viewport: { width, height } })
  // tsx names functions by a helper that the page has not.
  await context.addInitScript('globalThis.__name ??= (named) => named')
  await context.addInitScript(watch)
  const page = await context.newPage()
  const session = await context.newCDPSession(page)
  await session.send('Network.enable')
  await session.send('Emulation.setCPUThrottlingRate', { rate: slowed })
  if (line) await session.send('Network.emulateNetworkConditions', { offline: false, ...line })
  return { page, session }
}

/** What people press, found without knowing the page: a field, what unfolds, what acts. */
const PRESSED = ['main input:not([type=file])', 'main summary', 'main [aria-expanded]', 'main button'].map(
  (what) => `${what}:visible:enabled`,
)

/** Waits until a press has been painted and its event counted. */
const painted = (page: Page) =>
  page.evaluate(
    () =>
      new Promise<void>((done) => requestAnimationFrame(() => setTimeout(() => requestAnimationFrame(() => done())))),
  )

async function press(page: Page): Promise<number | null> {
  const before = page.url()
  let pressed = 0
  for (const what of PRESSED) {
    const one = page.locator(what).first()
    if ((await one.count()) === 0) continue
    await one.click({ timeout: 3000 }).catch(() => {})
    if (page.url() !== before) return null
    await painted(page)
    pressed++
  }
  return pressed > 0 ? await page.evaluate(() => window.seenFigures.pressMs) : null
}

/** What the page costs at its first visit. */
export async function measurePage(browser: Browser, url: string, device: Device, presses = true): Promise<PageFigures> {
  const { page, session } = await openSlowed(browser, device)
  try {
    let bytes = 0
    session.on('Network.loadingFinished', ({ encodedDataLength }) => {
      bytes += encodedDataLength
    })
    await page.goto(url, { waitUntil: 'load' })
    await page.evaluate(() => document.fonts.ready.then(() => undefined))
    await painted(page)
    await page.waitForLoadState('networkidle', { timeout: 5000 }).catch(() => {}) // an open line to the day is never idle
    const seen = await page.evaluate(() => ({ ...window.seenFigures }))
    return { ...seen, transferredKb: bytes / 1024, pressMs: presses ? await press(page) : null }
  } finally {
    await page.context().close()
  }
}
