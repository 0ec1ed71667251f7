import { readFileSync } from 'node:fs'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { BorderError } from '../../lib/data/border-error'
import { createShoot } from '../../lib/data/create-shoot'
import { HERE } from '../../lib/data/door/access'
import { listShoots } from '../../lib/data/list-shoots'
import { loadShoot } from '../../lib/data/load-shoot'
import { saveShoot } from '../../lib/data/save-shoot'
import { undoShoot } from '../../lib/data/undo-shoot'
import { closeAll, freshDatabase } from './real-database'

const DOCUMENT = JSON.parse(readFileSync('tests/fixtures/shoots/minimal.json', 'utf8'))
const titled = (title: string) => ({ ...DOCUMENT, title })
let made = 0
const writeId = () => `write-${String(made++).padStart(6, '0')}`

beforeEach(async () => {
  await freshDatabase()
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
