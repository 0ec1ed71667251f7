import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { FINDINGS } from '../../../lib/card/claim'
import { sheetsIn } from '../../../lib/print/render'
import { runCommand } from '../cli/run-command'
import { line } from '../log/lines'

const DEMO = 'prisma/demo/leg-of-lamb.json'
const card = (...args: string[]) => runCommand('card', ...args)
const folder = mkdtempSync(path.join(tmpdir(), 'card-'))
interface Printed {
  claims: {
    id: string
    finding: string
    figure: unknown
    trueSentence: string | null
    sentence: string
    found: string
  }[]
  cautions: { code: string; sentence: string }[]
}

const mark = (minutes: number, moment: string, cook = 'hero') => {
  const made = line(minutes, 'mark', { cook, moment })
  return JSON.stringify(made.document)
}
function logFile(name: string, ...lines: readonly string[]): string {
  const file = path.join(folder, `${name}.ndjson`)
  writeFileSync(file, `${lines.join('\n')}\n`)
  return file
}

describe('card on the command line', { timeout: 60_000 }, () => {
  it('prints claims with their findings and cautions, and writes one sheet of two sides', async () => {
    const pdf = path.join(folder, 'card.pdf')
    const { code, out, problems } = await card(DEMO, '--members', '64', '--paper', 'Letter', '--pdf', pdf)
    expect([code, problems]).toEqual([0, []])
    const { claims, cautions } = JSON.parse(out) as Printed
    expect(claims.length).toBeGreaterThan(8)
    for (const claim of claims) expect(FINDINGS).toContain(claim.finding)
    expect(cautions.map((c) => c.code)).toContain('carbon-monoxide')
    expect(sheetsIn(readFileSync(pdf))).toBe(2)
  })

  it('tells a false sentence what is true', async () => {
    const file = path.join(folder, 'false.json')
    const shoot = JSON.parse(readFileSync(DEMO, 'utf8'))
    shoot.card.steps = [{ id: 'x', text: 'Ready in an hour in all.' }]
    writeFileSync(file, JSON.stringify(shoot))
    const { claims } = JSON.parse((await card(file, '--members', '64')).out) as Printed
    const claim = claims.find((c) => c.sentence === 'Ready in an hour in all.')
    expect(claim).toMatchObject({ id: 'x.total-time', finding: 'contradicted' })
    expect(claim?.trueSentence).toMatch(/^Ready in \d h.* in all\.$/)
  })

  it('a day’s log outranks the model, and both figures are named', async () => {
    const file = path.join(folder, 'filmed.json')
    const shoot = JSON.parse(readFileSync(DEMO, 'utf8'))
    shoot.card.steps = [{ id: 'x', text: 'Roast it for 4 h 50. Roast it for 2 h 20.' }]
    writeFileSync(file, JSON.stringify(shoot))
    const log = logFile('day', mark(0, 'meat-on'), mark(290, 'pull'))
    const { code, out } = await card(file, '--members', '64', '--log', log)
    const of = (id: string) => (JSON.parse(out) as Printed).claims.find((claim) => claim.id === id)
    expect(code).toBe(0)
    expect(of('x.roast-time')).toMatchObject({
      finding: 'borne-out-with-care',
      source: 'the day’s log',
      figure: { likely: 17400 },
    })
    expect(of('x.roast-time.2')).toMatchObject({ finding: 'contradicted', source: 'the day’s log' })
    expect(of('x.roast-time.2')?.found).toMatch(/^filmed: 4 h 50; the model: /)
  })

  it.each([
    ['a log that is not there', [DEMO, '--log', 'nowhere.ndjson'], /^: nowhere.ndjson cannot be read/],
    [
      'a log of another shoot',
      [DEMO, '--log', logFile('other', mark(0, 'meat-on', 'goose'))],
      /^\/log: The log tells of a cook "goose"/,
    ],
    ['a line that is no entry', [DEMO, '--log', logFile('bad', 'not json')], /^\/log\/1: /],
    ['a paper that is none', [DEMO, '--paper', 'A5'], /^: Write: npm run -s card/],
    ['a file that is not there', ['nowhere.json'], /cannot be read/],
    ['a folder that is not there', [DEMO, '--members', '16', '--pdf', '/nowhere/card.pdf'], /cannot be written/],
  ])('%s is refused in one sentence', async (_, args, sentence) => {
    const { code, out, problems } = await card(...args)
    expect(code).toBe(2)
    expect(out).toBe('')
    expect(problems).toHaveLength(1)
    expect(problems[0]).toMatch(sentence)
  })
})
