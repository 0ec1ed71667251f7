import { execFileSync } from 'node:child_process'
import { appendFileSync, chmodSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { appendLog } from '../../../lib/data/append-log'
import { createShoot } from '../../../lib/data/create-shoot'
import { loadLog } from '../../../lib/data/load-log'
import { loadShoot } from '../../../lib/data/load-shoot'
import { saveShoot } from '../../../lib/data/save-shoot'
import { instant } from '../../../lib/units'
import { putEmptyDatabase } from '../../empty-database'
import { reading } from '../../unit/log/lines'
import { closeAll, freshFolder, reopen } from '../real-database'

const DOCUMENT = JSON.parse(readFileSync('tests/fixtures/shoots/minimal.json', 'utf8'))
const SENT = instant(1_800_000_000_000)
let folder = ''
let shoot = ''
const kept = async () => (await loadLog(shoot, 0)).map(({ document }) => document.id)
const journal = () => path.join(folder, 'journal', `${shoot}.ndjson`)
const log = () => path.join(folder, 'log', `${shoot}.ndjson`)
const lines = [1, 2, 3].map((minute) => reading(minute, 20 + minute).document)
const ids = lines.map(({ id }) => id)

let made = ''
let texts: readonly string[] = []

beforeAll(async () => {
  made = freshFolder()
  const created = await createShoot({ ...DOCUMENT, title: 'One' }, 'write-000001')
  shoot = created.ok ? created.value.id : ''
  await saveShoot(shoot, { ...DOCUMENT, title: 'Two' }, 'write-000002')
  await saveShoot(shoot, { ...DOCUMENT, title: 'Three' }, 'write-000003')
  for (const line of lines) await appendLog(shoot, SENT, [line])
  await closeAll()
  folder = made
  texts = [journal(), log()].map((file) => readFileSync(file, 'utf8'))
})
/** The journals alone beside an empty database. */
beforeEach(() => {
  folder = freshFolder()
  for (const name of ['journal', 'log']) mkdirSync(path.join(folder, name))
  for (const [i, file] of [journal(), log()].entries()) writeFileSync(file, texts[i] as string)
})
afterEach(closeAll)

/** One bit of a word in the file's second line is another one: what stands there still reads as JSON. */
function flipBitOf(file: string, word: string) {
  const bytes = readFileSync(file)
  // From the second line on: ids and check sums of the first may hold the same digits by chance.
  const place = bytes.indexOf(word, bytes.indexOf(10))
  expect(place).toBeGreaterThan(0)
  bytes[place] = (bytes[place] as number) ^ 1
  writeFileSync(file, bytes)
}

describe('a bit that is flipped in the middle of a journal', () => {
  const flip = () => {
    flipBitOf(journal(), 'Two')
    flipBitOf(log(), '22 °C')
  }

  it('is told with file and line; what the database has of the line is used, and written anew', async () => {
    folder = made
    flip()
    const { notes } = await reopen(folder)
    expect(notes.join('\n')).toMatch(new RegExp(`journal/${shoot}.ndjson does not read at line 2: the disk changed`))
    expect(notes.join('\n')).toMatch(new RegExp(`log/${shoot}.ndjson does not read at line 2.* make a backup`, 'i'))
    await closeAll()
    putEmptyDatabase(folder)
    await reopen(folder)
    expect((await loadShoot(shoot, 2))?.document.title).toBe('Two')
    expect((await kept()).sort()).toEqual([...ids].sort())
  })

  it('costs that line alone where the database is lost too, and says which', async () => {
    flip()
    const { notes } = await reopen(folder)
    expect(notes.join('\n')).toContain(`Version 2 of shoot ${shoot} is in no file that reads.`)
    expect((await loadShoot(shoot))?.document.title).toBe('Three')
    expect(await kept()).toEqual([ids[0], ids[2]])
    const after = reading(9, 30).document
    expect((await appendLog(shoot, SENT, [after])).entries[0]).toMatchObject({ became: 'kept', position: 4 })
  })
})

describe('a journal', () => {
  it('that ends in zeros, as a power cut leaves it, keeps its lines and takes the next', async () => {
    appendFileSync(log(), Buffer.alloc(5000))
    expect((await reopen(folder)).notes.join()).toMatch(
      /half-written line\(s\) in log\/.* \(4\); they were never confirmed/,
    )
    const after = reading(9, 30).document
    await appendLog(shoot, SENT, [after])
    await closeAll()
    putEmptyDatabase(folder)
    await reopen(folder)
    expect(await kept()).toEqual([...ids, after.id])
  })

  it('of a newer or an older version is kept to the letter: unknown keys and kinds are told, lines without a sum are read', async () => {
    const [first = '', second = '', third = ''] = readFileSync(log(), 'utf8').split('\n')
    const without = (line: string) => line.replace(/,"sum":"[0-9a-f]{8}"/, '')
    const newer = without(second).replace(/}$/, ',"mood":"calm"}')
    const strange = JSON.stringify({
      position: 4,
      received: 1,
      sent: 1,
      document: { id: 'x'.repeat(26), kind: 'smoke' },
    })
    const text = `${[without(first), newer, third, strange].join('\n')}\n`
    writeFileSync(log(), text)
    const notes = (await reopen(folder)).notes.join('\n')
    expect(notes).toMatch(/was written by a newer Emberslate at line 2 \(it has mood\)/)
    expect(notes).toMatch(/1 line\(s\) of a kind that this Emberslate does not know \(smoke\)\. They are kept/)
    expect(await kept()).toEqual([...ids, 'x'.repeat(26)])
    expect(readFileSync(log(), 'utf8')).toBe(text)
  })

  it('with two lines for one place, of which the disk did not take one back, keeps both and opens', async () => {
    const late = reading(8, 40).document
    appendFileSync(log(), `${JSON.stringify({ position: 2, received: 1, sent: 1, document: late })}\n`)
    await reopen(folder)
    expect(await kept()).toEqual([...ids, late.id])
  })

  it('that may not be read stops the start with its name and what to do, and is never taken for empty', async () => {
    await expect(unreadably(() => reopen(folder))).rejects.toThrow(
      new RegExp(`journal/${shoot}.ndjson cannot be read: this user may not .*Give the folder back`),
    )
  })
})

/** As somebody else than root, to whom this file alone is closed. */
async function unreadably<T>(work: () => Promise<T>): Promise<T> {
  const isRoot = process.getuid?.() === 0
  chmodSync(journal(), 0)
  if (!isRoot) return work().finally(() => chmodSync(journal(), 0o600))
  execFileSync('chown', ['-R', '65534', folder])
  execFileSync('chown', ['0', journal()])
  process.seteuid?.(65534)
  return work().finally(() => {
    process.seteuid?.(0)
    execFileSync('chown', ['-R', '0', folder])
    chmodSync(journal(), 0o600)
  })
}
