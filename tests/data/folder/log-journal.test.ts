import { appendFileSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { appendLog } from '../../../lib/data/append-log'
import { createShoot } from '../../../lib/data/create-shoot'
import { loadLog } from '../../../lib/data/load-log'
import { instant } from '../../../lib/units'
import { putEmptyDatabase } from '../../empty-database'
import { reading } from '../../unit/log/lines'
import { closeAll, freshFolder, reopen } from '../real-database'

const DOCUMENT = JSON.parse(readFileSync('tests/fixtures/shoots/minimal.json', 'utf8'))
let folder: string
let shoot: string
beforeEach(async () => {
  folder = freshFolder()
  const made = await createShoot(DOCUMENT, 'write-000001')
  shoot = made.ok ? made.value.id : ''
})
afterEach(closeAll)

const SENT = instant(1_800_000_000_000)
const entries = (count: number) => Array.from({ length: count }, (_, i) => reading(i, 10 + i).document)
const append = (...documents: unknown[]) => appendLog(shoot, SENT, documents)
const became = async (sending: ReturnType<typeof append>) => (await sending).entries.map((one) => one.became)
const kept = async () => (await loadLog(shoot, 0)).map(({ document }) => document)
const journal = () => path.join(folder, 'log', `${shoot}.ndjson`)

describe('the journal of the log', () => {
  it('holds each line before it is confirmed, and gives a lost database all of them back', async () => {
    const all = entries(5)
    await append(...all)
    expect(readFileSync(journal(), 'utf8').trimEnd().split('\n')).toHaveLength(5)
    await closeAll()
    rmSync(path.join(folder, 'pg'), { recursive: true })
    const { notes } = await reopen(folder)
    expect(notes).toContain(`Put back 5 log line(s) of shoot ${shoot} from its journal.`)
    expect(await kept()).toEqual(all)
    expect(await became(append(all[0]))).toEqual(['known'])
  })
  it('skips a half-written last line, says so, and goes on', async () => {
    const [a, b] = entries(2)
    await append(a)
    await closeAll()
    appendFileSync(journal(), '{"position":2,"rec')
    expect((await reopen(folder)).notes.join()).toContain('half-written')
    await append(b)
    await closeAll()
    putEmptyDatabase(folder)
    await reopen(folder)
    expect(await kept()).toEqual([a, b])
  })
  it('is written again from the database where somebody removed it', async () => {
    const [a] = entries(1)
    await append(a)
    await closeAll()
    renameSync(journal(), `${journal()}-gone`)
    await reopen(folder)
    expect(JSON.parse(readFileSync(journal(), 'utf8')).document).toEqual(a)
  })
  it('that the disk does not take refuses the entries and keeps none', async () => {
    writeFileSync(path.join(folder, 'log'), 'in the way')
    await expect(append(...entries(1))).rejects.toMatchObject({ code: 'disk-refused' })
    expect(await kept()).toEqual([])
  })
})
