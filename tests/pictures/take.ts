import { createHash } from 'node:crypto'
import type { Browser, Locator, Page } from 'playwright-core'

/** A picture of a guide: where it stands, and how to get there as a person does. */
export interface Shot {
  readonly name: string
  readonly width: number
  readonly height: number
  /** Leaves the page as it is to be taken, and says which part; all that is in sight where it says none. */
  go(page: Page, place: Place): Promise<Locator | undefined>
}
export interface Place {
  readonly address: string
  /** Of the demo shoot. */
  readonly shoot: string
  /** How far the server's clock runs ahead; the browser's has to agree. */
  readonly shiftMs: number
}
export interface Taken {
  readonly name: string
  readonly webp: Buffer
  readonly width: number
  readonly height: number
  /** A hash of the words in it: it changes when the screen says something else. */
  readonly shows: string
}

const PHONE_PX = 500
const MARGIN_PX = 20
/** Lettering stays sharp; without any loss a picture weighs five times as much. */
const QUALITY = 0.85
/** Addresses, ids and ages differ from one run to the next and say nothing. */
const PASSING = /127\.0\.0\.1:\d+|[0-9a-f]{12}|\d+ (s|min) ago/g
const wordsOf = (text: string) => text.replace(PASSING, '').replace(/\s+/g, ' ').trim()
const hash = (text: string) => createHash('sha256').update(text).digest('hex').slice(0, 12)

const shifted = (shiftMs: number) => `{
  const { now } = Date
  const later = () => now() + ${shiftMs}
  globalThis.Date = new Proxy(Date, {
    construct: (date, parts, self) => Reflect.construct(date, parts.length > 0 ? parts : [later()], self),
    get: (date, name) => (name === 'now' ? later : Reflect.get(date, name)),
  })
}`

/** By day, at one size, without motion: the same page gives the same picture. */
export async function take(browser: Browser, shot: Shot, place: Place): Promise<Taken> {
  const { name, width, height } = shot
  const context = await browser.newContext({
    viewport: { width, height },
    deviceScaleFactor: width < PHONE_PX ? 2 : 1.5,
    colorScheme: 'light',
    reducedMotion: 'reduce',
    locale: 'en-GB',
    timezoneId: 'Europe/Dublin',
  })
  try {
    await context.addInitScript(shifted(place.shiftMs))
    const page = await context.newPage()
    page.setDefaultTimeout(45_000)
    const part = await shot.go(page, place)
    await page.evaluate(() => document.fonts.ready)
    const seen = part ?? page.locator('main')
    const shows = hash(wordsOf((await seen.textContent()) ?? ''))
    const clip = part ? await aboutIt(part, width) : { x: 0, y: 0, width, height }
    const png = await page.screenshot({ animations: 'disabled', caret: 'hide', clip, fullPage: part !== undefined })
    const webp = await webpOf(context.newPage(), png)
    return { name, webp, width: clip.width, height: clip.height, shows }
  } finally {
    await context.close()
  }
}

/** A part of the page with a little of the page about it. */
async function aboutIt(part: Locator, pageWidth: number) {
  const box = await part.evaluate((element) => {
    const { left, top, width, height } = element.getBoundingClientRect()
    return { left, top: top + window.scrollY, width, height }
  })
  const x = Math.max(0, Math.round(box.left) - MARGIN_PX)
  return {
    x,
    y: Math.max(0, Math.round(box.top) - MARGIN_PX),
    width: Math.min(pageWidth - x, Math.round(box.width) + 2 * MARGIN_PX),
    height: Math.round(box.height) + 2 * MARGIN_PX,
  }
}

/** The browser has the encoder. */
async function webpOf(opening: Promise<Page>, png: Buffer): Promise<Buffer> {
  const page = await opening
  const base64 = await page.evaluate(
    async ({ from, quality }) => {
      const image = new Image()
      image.src = `data:image/png;base64,${from}`
      await image.decode()
      const canvas = document.createElement('canvas')
      canvas.width = image.naturalWidth
      canvas.height = image.naturalHeight
      canvas.getContext('2d')?.drawImage(image, 0, 0)
      return canvas.toDataURL('image/webp', quality).split(',')[1] ?? ''
    },
    { from: png.toString('base64'), quality: QUALITY },
  )
  return Buffer.from(base64, 'base64')
}
