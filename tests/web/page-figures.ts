/** `npm run figures [-- ADDRESS]`: what every page costs, measured in Chromium and printed. Times are this machine's; budgets are checked on bytes, in page-figures.test.ts. */
import { loadavg } from 'node:os'
import type { Browser } from 'playwright-core'
import { ownScriptKb } from '../../lib/cli/own-script'
import { openBrowser } from './browser'
import { everyPage } from './every-page'
import { FAST_4G, measurePage, openSlowed, SLOW_PHONE } from './measured-page'
import { startApp } from './server'
import { typedToDrawnMs } from './typed-to-drawn'

const print = (...columns: readonly (string | number)[]) =>
  console.log(columns.map((column, i) => (i === 0 ? String(column).padEnd(34) : String(column).padStart(10))).join(' '))
const whole = (ms: number | null) => (ms === null ? '-' : Math.round(ms))

async function pagesOf(browser: Browser, address: string) {
  const pages = await everyPage(address)
  const own = await ownScriptKb(address, pages)
  print('page', 'script kB', 'sent kB', 'shift', 'paint ms', 'task ms', 'press ms')
  for (const page of pages) {
    await (await fetch(address + page)).text() // what the server works out once is not the phone's
    const of = await measurePage(browser, address + page, SLOW_PHONE)
    const script = (own.get(page) as number).toFixed(1)
    const figures = [of.transferredKb.toFixed(0), of.shift.toFixed(4), whole(of.largestMs), whole(of.longestTaskMs)]
    print(page.replace(/[0-9a-f]{12}/, 'ID'), script, ...figures, whole(of.pressMs) || '<16')
  }
}

async function typing(browser: Browser, address: string, slowed: number) {
  const { page } = await openSlowed(browser, { width: 1280, height: 900, slowed })
  await page.goto(`${address}/shoots/new`)
  const [first = 0, ...rest] = await typedToDrawnMs(page)
  const sorted = rest.toSorted((a, b) => a - b)
  print(
    `key to heat line, ${slowed}x slowed`,
    whole(first),
    whole(sorted[sorted.length >> 1] ?? 0),
    whole(sorted.at(-1) ?? 0),
  )
  await page.context().close()
}

const given = process.argv[2]
const app = given ? null : await startApp()
const address = given ?? app?.address ?? ''
const browser = await openBrowser()
try {
  console.log(
    `Load ${loadavg()[0]?.toFixed(1)}. ${SLOW_PHONE.slowed}x slowed, ${SLOW_PHONE.width} px wide, ${FAST_4G.latency} ms a turn.`,
  )
  await pagesOf(browser, address)
  print('typing', 'first ms', 'median', 'worst')
  for (const slowed of [1, SLOW_PHONE.slowed]) await typing(browser, address, slowed)
  console.log(`Load ${loadavg()[0]?.toFixed(1)}.`)
} finally {
  await browser.close()
  await app?.stop()
}
