import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { runCommand } from '../cli/run-command'

const DEMO = 'prisma/demo/leg-of-lamb.json'
const folder = mkdtempSync(join(tmpdir(), 'check-'))
const written = (name: string, text: string) => {
  const path = join(folder, name)
  writeFileSync(path, text)
  return path
}

describe('npm run check', () => {
  it('finds nothing in the demo as it is laid out; in a layout with two faults these two and nothing else', {
    timeout: 120_000,
  }, async () => {
    const laidOut = (await runCommand('layout', DEMO)).out
    expect(await runCommand('check', DEMO, '--layout', written('laid-out.json', laidOut))).toEqual({
      code: 0,
      out: '[]\n',
      problems: [],
    })
    const layout = JSON.parse(laidOut)
    layout.calls.pop()
    layout.meals = []
    const faulty = await runCommand('check', DEMO, '--layout', written('faulty.json', JSON.stringify(layout)))
    const rules = JSON.parse(faulty.out).map((v: { rule: string }) => v.rule)
    expect(new Set(rules)).toEqual(new Set(['call-missing', 'meal-missing']))
    expect(faulty.code).toBe(0)
  })
  it('lays out a file by itself where no layout is given', async () => {
    const ran = await runCommand('check', 'tests/fixtures/shoots/minimal.json', '--members', '16')
    expect(ran).toEqual({ code: 0, out: '[]\n', problems: [] })
  })
  it('tells a layout that is none, a file that is not there and a wrong option, with exit code 2', {
    timeout: 60_000,
  }, async () => {
    const told = [
      await runCommand('check', DEMO, '--layout', written('short.json', '{"shots": 3}')),
      await runCommand('check', DEMO, '--layout', written('broken.json', '{')),
      await runCommand('check', join(folder, 'absent.json')),
      await runCommand('check', DEMO, '--seed', 'one'),
      await runCommand('check'),
    ]
    for (const { code, out, problems: lines } of told) {
      expect([code, out]).toEqual([2, ''])
      expect(lines.length).toBeLessThanOrEqual(4)
      for (const line of lines) expect(line).toMatch(/^(\/\S*)?: \S/)
    }
  })
})
