import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from 'playwright-core'

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

/** What axe finds on the page as it stands, a line each; empty when nothing. */
export async function axeViolations(page: Page): Promise<string[]> {
  await page.evaluate(source)
  return page.evaluate(async (tags) => {
    const axe = (window as unknown as { axe: { run: (root: Document, options: object) => Promise<AxeResult> } }).axe
    const { violations } = await axe.run(document, { runOnly: tags })
    return violations.map(
      (v) =>
        `${v.id}: ${v.nodes
          .map((n) => n.target.join(' '))
          .slice(0, 3)
          .join(' | ')}`,
    )
  }, TAGS)
}
interface AxeResult {
  violations: { id: string; nodes: { target: string[] }[] }[]
}
