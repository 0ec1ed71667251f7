import { spawnSync } from 'node:child_process'
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'

const DEMO = 'prisma/demo/leg-of-lamb.json'
const run = (tool: 'check' | 'layout', ...args: string[]) =>
  spawnSync(process.execPath, ['--import', 'tsx', `lib/cli/${tool}.ts`, ...args], { encoding: 'utf8' })
const folder = mkdtempSync(join(tmpdir(), 'check-'))
const written = (name: string, text: string) => {
  const path = join(folder, name)
  writeFileSync(path, text)
  return path
}

describe('npm run check', () => {
  it('finds nothing in the demo as it is laid out', { timeout: 120_000 }, () => {
    const { stdout, status } = run('check', DEMO)
    expect(JSON.parse(stdout)).toEqual([])
    expect(status).toBe(0)
  })
  it('takes a layout from a file, tells the two faults in it and nothing else, and ends well', {
    timeout: 120_000,
  }, () => {
    const laidOut = run('layout', DEMO).stdout
    const layout = JSON.parse(laidOut)
    layout.calls.pop()
    layout.meals = []
    const faulty = run('check', DEMO, '--layout', written('faulty.json', JSON.stringify(layout)))
    const rules = JSON.parse(faulty.stdout).map((v: { rule: string }) => v.rule)
    expect(new Set(rules)).toEqual(new Set(['call-missing', 'meal-missing']))
    expect(faulty.status).toBe(0)
  })
  it('tells a layout that is none, a file that is not there and a wrong option, with exit code 2', {
    timeout: 60_000,
  }, () => {
    const told = [
      run('check', DEMO, '--layout', written('short.json', '{"shots": 3}')),
      run('check', DEMO, '--layout', written('broken.json', '{')),
      run('check', join(folder, 'absent.json')),
      run('check', DEMO, '--seed', 'one'),
      run('check'),
    ]
    for (const { status, stdout, stderr } of told) {
      expect([status, stdout]).toEqual([2, ''])
      const lines = stderr.trimEnd().split('\n')
      expect(lines.length).toBeLessThanOrEqual(4)
      for (const line of lines) expect(line).toMatch(/^(\/\S*)?: \S/)
    }
  })
})
