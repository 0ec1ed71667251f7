import { appendFileSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { HERE } from '../../lib/data/access'
import { BorderError } from '../../lib/data/border-error'
import { createShoot } from '../../lib/data/create-shoot'
import { listShoots } from '../../lib/data/list-shoots'
import { loadShoot } from '../../lib/data/load-shoot'
import { saveShoot } from '../../lib/data/save-shoot'
import { undoShoot } from '../../lib/data/undo-shoot'
import { putEmptyDatabase } from '../empty-database'
import { closeAll, freshFolder, openElsewhere, reopen } from './real-database'

const DOCUMENT = JSON.parse(readFileSync('tests/fixtures/shoots/minimal.json', 'utf8'))
const titled = (title: string) => ({ ...DOCUMENT, title })
let folder: string
let made = 0
const writeId = () => `write-${String(made++).padStart(6, '0')}`

beforeEach(async () => {
  folder = await freshFolder()
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

describe('shoots', () => {
  it('come back as they were written, keys in their order, and are listed', async () => {
    const { id } = await created('Kept')
    expect(JSON.stringify((await loadShoot(id))?.document)).toBe(JSON.stringify(titled('Kept')))
    expect((await listShoots(HERE)).map((one) => one.title)).toEqual(['Kept'])
    expect(await loadShoot('nothing-here')).toBeUndefined()
  })

  it('are created once when the creation is sent twice', async () => {
    const twice = writeId()
    const [a, b] = await Promise.all([createShoot(DOCUMENT, twice), createShoot(DOCUMENT, twice)])
    expect(a).toEqual(b)
    expect(await listShoots(HERE)).toHaveLength(1)
  })

  it('are saved once when the save is sent twice, even on a base that has moved by it', async () => {
    const { id } = await created()
    const twice = writeId()
    const first = await saveShoot(id, titled('Second'), twice, 1)
    expect(await saveShoot(id, titled('Second'), twice, 1)).toEqual(first)
    expect((await loadShoot(id))?.version).toBe(2)
  })

  it('are not overwritten by a change made on an older version', async () => {
    const { id } = await created()
    await saveShoot(id, titled('Second'), writeId(), 1)
    const stale = await saveShoot(id, titled('Late'), writeId(), 1).catch((fault) => fault)
    expect(stale).toMatchObject({ code: 'stale', detail: { version: 2 } })
    expect(await titleOf(id)).toBe('Second')
  })

  it('keep one of two changes sent at once on the same version, and refuse the other', async () => {
    const { id } = await created()
    const both = ['A', 'B'].map((title) => refusalOf(saveShoot(id, titled(title), writeId(), 1)))
    expect((await Promise.all(both)).sort()).toEqual(['none', 'stale'])
  })

  it('refuse a document that does not read, with its problems, and store nothing', async () => {
    const { id } = await created()
    const result = await saveShoot(id, { ...DOCUMENT, title: 7 }, writeId())
    expect(result).toMatchObject({ ok: false, problems: [{ pointer: '/title' }] })
    expect((await loadShoot(id))?.version).toBe(1)
  })

  it('refuse a write without its id, and a shoot that is not there', async () => {
    expect(await refusalOf(createShoot(DOCUMENT, ''))).toBe('write-id-missing')
    expect(await refusalOf(saveShoot('nowhere', DOCUMENT, writeId()))).toBe('not-found')
    expect(await refusalOf(undoShoot('nowhere', writeId()))).toBe('not-found')
  })

  it('take back one change after another to the first version, each as a new version', async () => {
    const { id } = await created('1')
    for (const title of ['2', '3']) await saveShoot(id, titled(title), writeId())
    expect((await undoShoot(id, writeId())).document.title).toBe('2')
    const back = await undoShoot(id, writeId())
    expect([back.document.title, back.version, back.canUndo]).toEqual(['1', 5, false])
    expect(await refusalOf(undoShoot(id, writeId()))).toBe('nothing-to-undo')
    await saveShoot(id, titled('new'), writeId())
    expect((await undoShoot(id, writeId())).document.title).toBe('1')
    expect((await loadShoot(id, 3))?.document.title).toBe('3')
  })
})

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
