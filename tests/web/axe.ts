import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from 'playwright-core'

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')
/** [WCAG 2.2, 2.5.8, "Equivalent"]: what a box under the heat line does, the 44 px handle of its line in the table does too. */
const EQUIVALENT = '.lane-grip'
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

/** What axe finds on the page as it stands, a line each; empty when nothing. */
export async function axeViolations(page: Page): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(source)
  return page.evaluate(
    async ({ tags, equivalent }) => {
      const axe = (window as unknown as { axe: { run: (root: Document, options: object) => Promise<AxeResult> } }).axe
      const { violations } = await axe.run(document, { runOnly: tags, resultTypes: ['violations'] })
      return violations.flatMap(({ id, nodes }) => {
        const at = nodes
          .map((n) => n.target.join(' '))
          .filter((one) => id !== 'target-size' || !document.querySelector(one)?.matches(equivalent))
        return at.length === 0 ? [] : `${id}: ${at.slice(0, 3).join(' | ')}`
      })
    },
    { tags: TAGS, equivalent: EQUIVALENT },
  )
}
interface AxeResult {
  violations: { id: string; nodes: { target: string[] }[] }[]
}
