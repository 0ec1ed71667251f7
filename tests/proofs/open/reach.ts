import type { CDPSession, Page } from 'playwright-core'
import { axeViolations } from '../../web/axe'
import { openBrowser } from '../../web/browser'
import {
  cutOrOverlaid,
  notReached,
  paleText,
  picturesUntold,
  runsOff,
  saidWrong,
  smallerThan,
} from '../../web/reach-checks'
import { REACH_PAGES, REACH_STATES, type ReachShoots, type ReachState, reachShoots } from '../../web/reach-pages'
import { type ReadyApp, startApp } from '../../web/server'

interface Look {
  readonly name: string
  readonly width: number
  readonly height: number
  readonly ground: 'light' | 'dark'
  readonly textPx: number
}
/** A laptop, twice its text, twice its zoom, a phone, and the narrowest one [WCAG 2.2, 1.4.4, 1.4.10]. */
const LOOKS: readonly Look[] = [
  { name: '1280 px', width: 1280, height: 900, ground: 'light', textPx: 16 },
  { name: '1280 px at dusk', width: 1280, height: 900, ground: 'dark', textPx: 16 },
  { name: 'twice the text', width: 1280, height: 900, ground: 'light', textPx: 32 },
  { name: 'twice the zoom', width: 640, height: 450, ground: 'light', textPx: 16 },
  { name: '390 px', width: 390, height: 844, ground: 'light', textPx: 16 },
  { name: '390 px at dusk', width: 390, height: 844, ground: 'dark', textPx: 16 },
  { name: '320 px', width: 320, height: 640, ground: 'dark', textPx: 16 },
]
/** [WCAG 2.2, 1.4.6] on the set board, for it is read in the sun. */
const BOARD_RATIO = 7
const LEAST_TARGET_PX = 24
/** What a box under the heat line does, the handle of its line in the table does too. */
const EQUIVALENT = 'lane-grip'

/** Every page and state in every look: axe finds nothing, nothing runs off or is cut, all is reached by Tab and seen there. */
export async function prove(): Promise<Record<string, number>> {
  const given = process.env.EMBERSLATE_APP
  const running = given ? null : await startApp()
  const app: ReadyApp = given ? JSON.parse(given) : (running as ReadyApp)
  const browser = await openBrowser()
  const faults: string[] = []
  let looked = 0
  try {
    const context = await browser.newContext()
    // What compiles this file names its functions by a helper that the page lacks.
    await context.addInitScript('globalThis.__name ??= (it) => it')
    const page = await context.newPage()
    const letters = await context.newCDPSession(page)
    const shoots = await reachShoots(page.request, app.address, `reach-proof-${Date.now()}`)
    for (const state of [...REACH_PAGES, ...REACH_STATES]) {
      try {
        await open(page, app.address, shoots, state)
        for (const look of LOOKS) {
          faults.push(...(await faultsIn(page, letters, look)).map((one) => `${state.name}, ${look.name}: ${one}`))
          looked++
        }
      } catch (error) {
        faults.push(`${state.name}: ${String(error).slice(0, 200)}`)
      }
    }
  } finally {
    await browser.close()
    await running?.stop()
  }
  if (faults.length > 0) throw new Error(`${faults.length} faults in ${looked} looks:\n${faults.join('\n')}`)
  return { states: REACH_PAGES.length + REACH_STATES.length, looks: looked, faults: faults.length }
}

async function open(page: Page, address: string, shoots: ReachShoots, { path, ready, act }: ReachState) {
  await page.setViewportSize({ width: 390, height: 844 })
  await page.goto(address + path(shoots), { waitUntil: 'load', timeout: 120_000 })
  if (ready) await page.locator(ready).first().waitFor({ timeout: 60_000 })
  await act?.(page)
}

async function faultsIn(page: Page, letters: CDPSession, look: Look): Promise<readonly string[]> {
  await page.setViewportSize({ width: look.width, height: look.height })
  await page.emulateMedia({ colorScheme: look.ground })
  await letters.send('Page.setFontSizes', { fontSizes: { standard: look.textPx, fixed: look.textPx } })
  await page.evaluate((ground) => {
    // The board has its own ground, which it takes from the sun.
    if (!document.querySelector('.set')) return
    document.documentElement.classList.toggle('dusk', ground === 'dark')
    document.documentElement.classList.toggle('day', ground === 'light')
    document.querySelector('.set')?.classList.toggle('dusk', ground === 'dark')
  }, look.ground)
  const seen = [...(await runsOff(page)), ...(await cutOrOverlaid(page))]
  if (look.textPx > 16) return seen
  return [
    ...seen,
    ...(await axeViolations(page)),
    ...(await saidWrong(page)),
    ...(await picturesUntold(page)),
    ...(await paleText(page, '.set', BOARD_RATIO)),
    ...(await smallerThan(page, LEAST_TARGET_PX)).filter((one) => !one.includes(EQUIVALENT)),
    ...(await notReached(page)),
  ]
}
