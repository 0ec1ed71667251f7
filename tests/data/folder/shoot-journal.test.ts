import { appendFileSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { BorderError } from '../../../lib/data/border-error'
import { createShoot } from '../../../lib/data/create-shoot'
import { loadShoot } from '../../../lib/data/load-shoot'
import { saveShoot } from '../../../lib/data/save-shoot'
import { undoShoot } from '../../../lib/data/undo-shoot'
import { putEmptyDatabase } from '../../empty-database'
import { closeAll, freshFolder, openElsewhere, reopen } from '../real-database'

const DOCUMENT = JSON.parse(readFileSync('tests/fixtures/shoots/minimal.json', 'utf8'))
const titled = (title: string) => ({ ...DOCUMENT, title })
let folder: string
let made = 0
const writeId = () => `write-${String(made++).padStart(6, '0')}`

beforeEach(() => {
  folder = freshFolder()
})
afterEach(closeAll)

async function created(title = 'First') {
  const result = await createShoot(titled(title), writeId())
  if (!result.ok) throw new Error(result.problems[0]?.sentence)
  return result.value
}
const titleOf = async (id: string) => (await loadShoot(id))?.document.title
const refusalOf = (work: Promise<unknown>) =>
  work.then(
    () => 'none',
    (fault) => (fault instanceof BorderError ? fault.code : String(fault)),
  )
const journalOf = (id: string) => path.join(folder, 'journal', `${id}.ndjson`)

describe('journal', () => {
  it('holds each version before it is confirmed, a line each', async () => {
    const { id } = await created()
    await saveShoot(id, titled('Second'), writeId())
    const lines = readFileSync(journalOf(id), 'utf8').trimEnd().split('\n')
    expect(lines.map((line) => JSON.parse(line).document.title)).toEqual(['First', 'Second'])
  })

  it('puts back what a database that was set back lacks', async () => {
    const { id } = await created()
    await saveShoot(id, titled('Second'), writeId())
    await closeAll()
    putEmptyDatabase(folder)
    const { notes } = await reopen(folder)
    expect(notes).toEqual([`Put back 2 saved version(s) of shoot ${id} from its journal.`])
    expect(await titleOf(id)).toBe('Second')
    expect((await undoShoot(id, writeId())).document.title).toBe('First')
  })

  it('skips a half-written last line, says so, and takes the next save on a line of its own', async () => {
    const { id } = await created()
    await closeAll()
    appendFileSync(journalOf(id), '{"shootId":"half')
    expect((await reopen(folder)).notes.join()).toContain('half-written')
    await saveShoot(id, titled('After the cut'), writeId())
    await closeAll()
    putEmptyDatabase(folder)
    await reopen(folder)
    expect(await titleOf(id)).toBe('After the cut')
  })

  it('moves a database that does not open aside and rebuilds it', async () => {
    const { id } = await created('Survivor')
    await closeAll()
    rmSync(path.join(folder, 'pg', 'global'), { recursive: true })
    writeFileSync(path.join(folder, 'pg', 'PG_VERSION'), 'nonsense')
    const { notes } = await reopen(folder)
    expect(notes[0]).toContain('moved aside')
    expect(readdirSync(folder).some((name) => name.startsWith('pg-unreadable-'))).toBe(true)
    expect(await titleOf(id)).toBe('Survivor')
  })

  it('is written again from the database where somebody removed it', async () => {
    const { id } = await created()
    await closeAll()
    renameSync(journalOf(id), path.join(mkdtempSync(path.join(tmpdir(), 'emberslate-')), 'gone'))
    await reopen(folder)
    expect(readFileSync(journalOf(id), 'utf8')).toContain('"First"')
  })

  it('refuses the save and keeps nothing where the disk does not take the line', async () => {
    const { id } = await created()
    rmSync(path.join(folder, 'journal'), { recursive: true })
    writeFileSync(path.join(folder, 'journal'), 'in the way')
    expect(await refusalOf(saveShoot(id, titled('Lost'), writeId()))).toBe('disk-refused')
    expect(await titleOf(id)).toBe('First')
  })
})

describe('folder', () => {
  it('is refused to a second process', async () => {
    await created()
    expect(await openElsewhere(folder)).toContain('is in use by another Emberslate')
  })
})
