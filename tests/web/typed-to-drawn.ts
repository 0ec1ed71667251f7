import type { Page } from 'playwright-core'

/** What is typed into the mass, "3.2 kg", behind its point: each key gives another whole figure. */
const KEYS = ['5', 'Backspace', '4', 'Backspace', '6', 'Backspace', '3', 'Backspace', '7', 'Backspace']

/** Milliseconds from each key to the painted heat line that follows it; the first key also starts the worker. */
export async function typedToDrawnMs(page: Page): Promise<readonly number[]> {
  const field = page.getByLabel(/mass|weight/i).first()
  await field.fill('3.2 kg')
  await page.waitForTimeout(1500)
  await field.focus()
  await field.evaluate((input: HTMLInputElement) => input.setSelectionRange(2, 2))
  const took: number[] = []
  for (const key of KEYS) {
    await page.evaluate(watchLine)
    await page.keyboard.press(key)
    took.push(await page.evaluate(() => window.lineDrawn))
  }
  return took
}

declare global {
  interface Window {
    lineDrawn: Promise<number>
  }
}

/** Runs in the page: from the next key until the frame in which a drawing of a figure is another. */
function watchLine(): void {
  const drawn = () => [...document.querySelectorAll('figure svg path')].map((path) => path.getAttribute('d')).join()
  const before = drawn()
  let since = 0
  const pressed = (event: Event) => {
    since = event.timeStamp
  }
  window.addEventListener('keydown', pressed, { once: true, capture: true })
  window.lineDrawn = new Promise((done) => {
    const changed = new MutationObserver(() => {
      if (since === 0 || drawn() === before) return
      changed.disconnect()
      requestAnimationFrame(() => setTimeout(() => done(performance.now() - since)))
    })
    changed.observe(document.body, { subtree: true, childList: true, attributes: true })
  })
}
