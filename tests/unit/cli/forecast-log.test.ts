import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Line } from '../../../lib/log/log'
import { writeLog } from '../../../lib/log/ndjson'
import { mark, reading } from '../log/lines'
import { runCommand } from './run-command'

let folder = ''
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'emberslate-log-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

function forecast(lines: readonly Line[], ...args: string[]) {
  const file = path.join(folder, 'day.ndjson')
  writeFileSync(file, writeLog(lines))
  return runCommand('forecast', 'prisma/demo/leg-of-lamb.json', '--members', '8', '--log', file, ...args)
}
const atProbe = (out: string): number =>
  JSON.parse(out).cooks[0].moments.find((moment: { id: string }) => moment.id === 'probe-in').likely

describe('forecast from a slate log', { timeout: 60_000 }, () => {
  it("a mark outranks the plan: the probe went in when it was marked, by the server's clock", async () => {
    const late = { device: 'phone-b', aheadS: 600 }
    const { code, out } = await forecast([
      mark(0, 'meat-on'),
      mark(70, 'probe-in', late),
      reading(72, 14),
      reading(80, 18),
    ])
    expect(code).toBe(0)
    expect(atProbe(out)).toBe(4200)
  })
  it('tells the line of a fault, a cook that is not in the shoot, and readings without their zero', async () => {
    const other = { ...mark(1, 'pull'), document: { ...mark(1, 'pull').document, cook: 'twin' } }
    const broken = { ...mark(2, 'pull'), document: { ...mark(2, 'pull').document, moment: 'pul' } }
    const { code, problems } = await forecast([reading(5, 14), other, broken])
    expect(code).toBe(2)
    expect(problems).toEqual([
      '/log/3/moment: "pul" is not a moment. Did you mean "pull"?',
      expect.stringContaining('/log: The log has readings of "hero" and no mark of its meat-on'),
      expect.stringContaining('/log: The log tells of a cook "twin", and the shoot has hero'),
    ])
  })
  it('takes readings from the log or from a table, not from both, and no time before the last of them', async () => {
    expect((await forecast([mark(0, 'meat-on')], '--readings', 'x.csv')).problems[0]).toContain('not both')
    const early = await forecast([mark(0, 'meat-on'), reading(10, 9)], '--now', '60')
    expect(early.problems).toEqual([
      ': --now is 60, before the last reading or mark at 600 s; it is that time or later, or left out.',
    ])
  })
})
