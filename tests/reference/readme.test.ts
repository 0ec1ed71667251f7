import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { headline } from './headline'

// Here, where the other suites have measured already.
it('the figures of README are the measured ones (npm run report prints the table)', () => {
  expect(readFileSync('README.md', 'utf8')).toContain(headline().join('\n'))
}, 120_000)
