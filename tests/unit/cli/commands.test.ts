import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { valueAt } from '../../../lib/plan/edit'
import { runCommand } from './run-command'

const shoot = JSON.parse(readFileSync('prisma/demo/leg-of-lamb.json', 'utf8'))
const folder = mkdtempSync(path.join(tmpdir(), 'commands-'))
afterAll(() => rmSync(folder, { recursive: true }))
const file = (name: string, text: string) => {
  writeFileSync(path.join(folder, name), text)
  return path.join(folder, name)
}
const forecast = (document: unknown, ...args: string[]) =>
  runCommand('forecast', file('shoot.json', JSON.stringify(document)), ...args)
interface Moment {
  id: string
  q10: number
  q90: number
}
interface Printed {
  cooks: { moments: { id: string }[]; warnings: { code: string; path: string }[] }[]
}

describe('forecast on the command line', { timeout: 60_000 }, () => {
  it('same file and seed: same bytes; another seed: others', async () => {
    const run = (...more: string[]) => forecast(shoot, '--members', '8', ...more)
    const [one, two, other] = [await run(), await run(), await run('--seed', '2')]
    expect(one?.out).toBe(two?.out)
    expect(one?.out).not.toBe(other?.out)
  })

  it('warnings stand at their places in the file, also where the preheat was left out', async () => {
    const [first] = shoot.cooks
    const hot = first.stages
      .filter((stage: { do: string }) => stage.do !== 'preheat')
      .map((stage: { do: string }) => (stage.do === 'sear' ? { ...stage, at: '500 °C' } : stage))
    const document = { ...shoot, cooks: [{ ...first, stages: hot, target: { doneness: 'well-done' } }], shots: [] }
    const { code, out } = await forecast(document, '--members', '8')
    const warnings = (JSON.parse(out) as Printed).cooks[0]?.warnings ?? []
    expect(code).toBe(0)
    expect(warnings.map((warning) => warning.code)).toEqual(
      expect.arrayContaining(['hotter-than-cooker', 'probe-out-for-sear', 'target-disagrees']),
    )
    const at = (code: string) => valueAt(document, warnings.find((warning) => warning.code === code)?.path ?? '')
    expect(at('hotter-than-cooker')).toBe('500 °C')
    expect(at('target-disagrees')).toBe('well-done')
  })

  it('nine faults are four lines, the last of which says how many more there are; nothing is printed', async () => {
    const keys = Object.fromEntries(Array.from({ length: 9 }, (_, i) => [`odd${i}`, i]))
    const { code, out, problems } = await forecast({ ...shoot, ...keys })
    expect([code, out, problems.length]).toEqual([2, '', 4])
    expect(problems[0]).toMatch(/^\/odd0: "odd0" is not known here\./)
    expect(problems[3]).toBe(': and 6 more')
  })

  it('an altitude without a unit is asked for in metres or feet', async () => {
    const { problems } = await forecast({ ...shoot, place: { ...shoot.place, altitude: 20 } })
    expect(problems).toEqual(['/place/altitude: 20 what? Write "20 m" or "66 ft".'])
  })

  it.each(['forecast', 'layout', 'check', 'card'] as const)(
    '%s takes every seed that a file may hold, and no other',
    async (command) => {
      const ask = async (seed: string) => (await runCommand(command, 'none.json', '--seed', seed)).problems
      expect((await ask('4294967295'))[0]).toMatch(/^: none.json cannot be read/)
      expect(await ask('4294967296')).toEqual([': --seed is a whole number from 0 to 4294967295.'])
    },
  )

  it('readings move the forecast; a fault in them is told at its line, and nothing is printed', async () => {
    const rows = Array.from({ length: 12 }, (_, i) => `${3600 + 120 * i},core,${22 + i}\n`).join('')
    const good = file('good.csv', `t_s,sensor,temp_C\n${rows}0,cooker,150\n`)
    const moved = await forecast(shoot, '--members', '8', '--kernel', 'simd', '--readings', good, '--now', '6000')
    const { cooks } = JSON.parse(moved.out) as { cooks: { read: { now: number; why: string[] }; moments: Moment[] }[] }
    expect([moved.code, cooks[0]?.read.now]).toEqual([0, 6000])
    expect(cooks[0]?.moments.find(({ id }) => id === 'probe-in')).toMatchObject({ q10: 3480, q90: 3480 })
    const bad = file('bad.csv', 't_s,sensor,temp_C\n60,core,hot\n')
    expect(await forecast(shoot, '--readings', bad)).toMatchObject({
      code: 2,
      out: '',
      problems: ['/readings/2: temp_C is "hot"; it is a number of °C from -60 to 1000.'],
    })
    const early = await forecast(shoot, '--readings', good, '--now', '60')
    expect([early.code, early.problems.length]).toEqual([2, 1])
    expect((await forecast(shoot, '--now', '60')).code).toBe(2)
  })

  it('run by its script it reads standard input, and a reader that hangs up is no fault', () => {
    const demo = 'prisma/demo/leg-of-lamb.json'
    const pipe = `"${process.execPath}" --import tsx lib/cli/forecast.ts - --members 4 <${demo} | head -c 9`
    expect(spawnSync('sh', ['-c', pipe], { encoding: 'utf8' })).toMatchObject({ stdout: '{\n  "mode', stderr: '' })
  })
})
