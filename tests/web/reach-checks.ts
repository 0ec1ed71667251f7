import type { Page } from 'playwright-core'

/**
 * What axe does not look for, each a line for a fault and empty when there is none. The functions run in the page, so
 * each brings what it needs.
 */

/** Nothing runs off the side but a table in its own scrolling box [WCAG 2.2, 1.4.10]. */
export const runsOff = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const room = document.documentElement.clientWidth
    if (document.documentElement.scrollWidth <= room) return []
    const inOwnBox = (one: Element): boolean => {
      const box = one.parentElement
      if (!box || box === document.body) return false
      return getComputedStyle(box).overflowX !== 'visible' || inOwnBox(box)
    }
    return [...document.body.querySelectorAll('*')]
      .filter((one) => one.getBoundingClientRect().right > room + 1 && !inOwnBox(one))
      .map((one) => `${Math.round(one.getBoundingClientRect().right)} of ${room} px: ${one.outerHTML.slice(0, 90)}`)
      .slice(-3)
  })

/** No text is cut off by its box or lies on other text [WCAG 2.2, 1.4.4]. */
export const cutOrOverlaid = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const faults: string[] = []
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
    const lines: { box: DOMRect; of: Element; words: string }[] = []
    const clipped = (one: Element | null): boolean =>
      one !== null && (getComputedStyle(one).clipPath !== 'none' || clipped(one.parentElement))
    const isShown = (one: Element) =>
      one.checkVisibility({ visibilityProperty: true, opacityProperty: true }) &&
      !one.closest('svg, .sr-only, script, style, option, [aria-hidden="true"]') &&
      !clipped(one)
    while (walker.nextNode()) {
      const [words, of] = [walker.currentNode.textContent?.trim() ?? '', walker.currentNode.parentElement]
      if (words === '' || !of || !isShown(of)) continue
      const range = document.createRange()
      range.selectNodeContents(walker.currentNode)
      for (const box of range.getClientRects()) lines.push({ box, of, words })
      const clips = of.closest('*')
      for (let box: Element | null = clips; box && box !== document.body; box = box.parentElement) {
        const { overflowX, overflowY, position } = getComputedStyle(box)
        if (position === 'fixed') break
        const own = box.getBoundingClientRect()
        const text = range.getBoundingClientRect()
        if (own.width < 2 || own.height < 2) break
        if ((overflowX === 'hidden' || overflowX === 'clip') && text.right > own.right + 2)
          faults.push(`cut at the side: ${words}`)
        if ((overflowY === 'hidden' || overflowY === 'clip') && text.bottom > own.bottom + 2)
          faults.push(`cut below: ${words}`)
      }
    }
    const pinned = (one: Element): boolean => {
      for (let box: Element | null = one; box; box = box.parentElement)
        if (['fixed', 'sticky'].includes(getComputedStyle(box).position)) return true
      return false
    }
    const free = lines.filter(({ of }) => !pinned(of)).sort((a, b) => a.box.top - b.box.top)
    free.forEach((one, i) => {
      for (let j = i + 1; j < free.length; j++) {
        const other = free[j]
        if (!other || other.box.top > one.box.bottom) break
        const down = Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top)
        const along = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left)
        if (along > 3 && down > 0.45 * Math.min(one.box.height, other.box.height))
          faults.push(`lies on other words: "${one.words.slice(0, 30)}" and "${other.words.slice(0, 30)}"`)
      }
    })
    return [...new Set(faults)].slice(0, 6)
  })

/** One title line, a name for the page, its language, one main part, and errors tied to their fields [WCAG 2.2, 1.3.1, 2.4.2, 3.1.1, 3.3.1]. */
export const saidWrong = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const faults: string[] = []
    const seen = (one: Element) => one.checkVisibility({ visibilityProperty: true })
    const count = (what: string) => [...document.querySelectorAll(what)].filter(seen).length
    if (document.documentElement.lang === '') faults.push('no language')
    if (document.title === '') faults.push('no title')
    if (count('main') !== 1) faults.push(`${count('main')} main parts`)
    if (count('h1') !== 1) faults.push(`${count('h1')} lines of the first rank`)
    for (const field of document.querySelectorAll('[aria-invalid="true"]')) {
      const by = (field.getAttribute('aria-describedby') ?? '').split(' ').filter(Boolean)
      const says = by
        .map((id) => document.getElementById(id)?.textContent ?? '')
        .join(' ')
        .trim()
      if (says === '') faults.push(`marked as wrong, but nothing says why: ${field.outerHTML.slice(0, 90)}`)
    }
    for (const field of document.querySelectorAll('[aria-describedby], [aria-labelledby], [aria-controls]'))
      for (const name of ['aria-describedby', 'aria-labelledby'])
        for (const id of (field.getAttribute(name) ?? '').split(' ').filter(Boolean))
          if (!document.getElementById(id)) faults.push(`${name} leads nowhere: ${field.outerHTML.slice(0, 90)}`)
    return faults
  })

/** Each picture is hidden from a screen reader, or has a name that says something and a table behind it. */
export const picturesUntold = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const faults: string[] = []
    for (const picture of document.querySelectorAll('svg, canvas, img')) {
      if (!picture.checkVisibility({ visibilityProperty: true }) || picture.closest('[aria-hidden="true"]')) continue
      if (picture.tagName === 'IMG') {
        if (!picture.hasAttribute('alt')) faults.push(`an image without words: ${picture.outerHTML.slice(0, 90)}`)
        continue
      }
      const name = picture.getAttribute('aria-label') ?? ''
      if (picture.getAttribute('role') !== 'img' || name.length < 12)
        faults.push(`a picture without words: ${picture.outerHTML.slice(0, 120)}`)
    }
    return faults
  })

/** Where Tab stops beside what was looked for, as in a box that scrolls. */
const UNMARKED = 'unmarked'
interface Stop {
  readonly what: string
  readonly fault: string
}
/** Everything that can be pressed or typed in is reached by Tab, and where one stands is seen [WCAG 2.2, 2.1.1, 2.4.7, 2.4.11]. */
export async function notReached(page: Page): Promise<string[]> {
  await page.evaluate(() => {
    const inside = [...document.querySelectorAll('[aria-modal="true"]')].at(-1) ?? document.body
    const all = inside.querySelectorAll<HTMLElement>(
      'a[href], button, input, select, textarea, summary, [tabindex], [role="slider"]',
    )
    let n = 0
    for (const one of document.querySelectorAll('[data-reach]')) one.removeAttribute('data-reach')
    for (const one of all) {
      const isGroup = one instanceof HTMLInputElement && one.type === 'radio' && !one.checked
      if (one.tabIndex < 0 || isGroup || one.matches(':disabled') || !one.checkVisibility({ visibilityProperty: true }))
        continue
      one.dataset.reach = String(n++)
    }
    const from = inside as HTMLElement
    const before = from.getAttribute('tabindex')
    from.tabIndex = -1
    from.focus()
    if (before === null) from.removeAttribute('tabindex')
  })
  const want = await page.locator('[data-reach]').count()
  const reached = new Set<string>()
  const faults: string[] = []
  let last = ''
  for (let i = 0; i < 2 * want + 12; i++) {
    await page.keyboard.press('Tab')
    const stop = await page.evaluate(focusFault)
    if (stop.what === '') {
      if (reached.size > 0) break
      continue
    }
    if (stop.what === UNMARKED) continue
    // A field of a date has several stops of its own.
    if (stop.what === last) continue
    if (reached.has(stop.what)) break
    last = stop.what
    reached.add(stop.what)
    if (stop.fault) faults.push(stop.fault)
  }
  const missed = await page.evaluate(
    (got) =>
      [...document.querySelectorAll<HTMLElement>('[data-reach]')]
        .filter((one) => !got.includes(one.dataset.reach ?? ''))
        .map((one) => `Tab does not reach: ${one.outerHTML.slice(0, 110)}`),
    [...reached],
  )
  return [...faults, ...missed]
}

function focusFault(): Stop {
  const one = document.activeElement as HTMLElement | null
  if (!one || one === document.body) return { what: '', fault: '' }
  if (one.dataset.reach === undefined) return { what: 'unmarked', fault: '' }
  const what = one.dataset.reach
  const box = one.getBoundingClientRect()
  const named = one.outerHTML.slice(0, 110)
  const outlined = (el: Element | null): boolean => {
    if (!el) return false
    const { outlineStyle, outlineWidth, outlineColor } = getComputedStyle(el)
    return outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2 && !outlineColor.endsWith(', 0)')
  }
  if (!outlined(one) && !outlined(one.parentElement) && !outlined(one.nextElementSibling))
    return { what, fault: `focus is not seen: ${named}` }
  if (box.width === 0 || box.bottom <= 0 || box.top >= innerHeight || box.right <= 0 || box.left >= innerWidth)
    return { what, fault: `focus is out of sight: ${named}` }
  const label = one.closest('label')
  const inSight = [0.1, 0.5, 0.9].some((x) =>
    [0.1, 0.5, 0.9].some((y) => {
      const at = document.elementFromPoint(box.left + x * box.width, box.top + y * box.height)
      return at !== null && (one.contains(at) || at.contains(one) || label?.contains(at) === true)
    }),
  )
  return { what, fault: inSight ? '' : `focus is hidden under something: ${named}` }
}

/** What can be pressed and is smaller than so many px, but for links within a sentence [WCAG 2.2, 2.5.8]. */
export const smallerThan = (page: Page, px: number): Promise<string[]> =>
  page.evaluate((least) => {
    const inSentence = (one: Element) => {
      if (getComputedStyle(one).display !== 'inline') return false
      const [own, around] = [one.textContent?.trim() ?? '', one.parentElement?.textContent?.trim() ?? '']
      return around.length > own.length + 3
    }
    return [...document.querySelectorAll('a[href], button, input, select, textarea, summary, [role="slider"]')]
      .filter(
        (one) =>
          one.checkVisibility({ visibilityProperty: true }) && !inSentence(one) && !one.matches('.sr-only, :disabled'),
      )
      .flatMap((one) => {
        const { width, height } = (one.closest('label') ?? one).getBoundingClientRect()
        return width < least || height < least
          ? [`${Math.round(width)} × ${Math.round(height)}: ${one.outerHTML.slice(0, 90)}`]
          : []
      })
  }, px)

/** Text that stands out less than this against what lies behind it; colours are taken as they are drawn. */
export const paleText = (page: Page, within: string, least: number): Promise<string[]> =>
  page.evaluate(
    ({ root, ratio }) => {
      const rgb = (colour: string) => (colour.match(/[\d.]+/g) ?? []).map(Number)
      const channel = (v: number) => (v / 255 <= 0.04045 ? v / 255 / 12.92 : ((v / 255 + 0.055) / 1.055) ** 2.4)
      const light = ([r = 0, g = 0, b = 0]: number[]) => 0.2126 * channel(r) + 0.7152 * channel(g) + 0.0722 * channel(b)
      const behind = (one: Element | null): number[] => {
        if (!one) return [255, 255, 255]
        const colour = rgb(getComputedStyle(one).backgroundColor)
        return colour.length >= 3 && (colour[3] ?? 1) > 0 ? colour : behind(one.parentElement)
      }
      const faults = new Map<string, string>()
      for (const box of document.querySelectorAll(root)) {
        const walker = document.createTreeWalker(box, NodeFilter.SHOW_TEXT)
        while (walker.nextNode()) {
          const of = walker.currentNode.parentElement
          const words = walker.currentNode.textContent?.trim() ?? ''
          if (
            !of ||
            words === '' ||
            of.closest('.sr-only, script, style') ||
            !of.checkVisibility({ visibilityProperty: true })
          )
            continue
          const style = getComputedStyle(of)
          const [a, b] = [light(rgb(of.closest('svg') ? style.fill : style.color)), light(behind(of))]
          const stands = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05)
          if (stands < ratio)
            faults.set(
              `${of.className}${stands.toFixed(2)}`,
              `${stands.toFixed(2)}: "${words.slice(0, 40)}" (${of.tagName} ${of.className})`,
            )
        }
      }
      return [...faults.values()]
    },
    { root: within, ratio: least },
  )
