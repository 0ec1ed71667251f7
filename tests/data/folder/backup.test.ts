import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { strToU8, zipSync } from 'fflate'
import { afterEach, describe, expect, it } from 'vitest'
import { backupCommand } from '../../../lib/admin/backup'
import { backUp } from '../../../lib/admin/backup/back-up'
import { restoreInto } from '../../../lib/admin/backup/restore-into'
import { appendLog } from '../../../lib/data/append-log'
import { createShoot } from '../../../lib/data/create-shoot'
import { openOwnerSession, sessionOf } from '../../../lib/data/door/sessions'
import { loadLog } from '../../../lib/data/load-log'
import { loadShoot } from '../../../lib/data/load-shoot'
import { keepPhoto, readPhoto } from '../../../lib/data/photos'
import { saveShoot } from '../../../lib/data/save-shoot'
import { instant } from '../../../lib/units'
import { reading } from '../../unit/log/lines'
import { closeAll, freshFolder, reopen } from '../real-database'

const LONG = 60_000
const DOCUMENT = JSON.parse(readFileSync('tests/fixtures/shoots/minimal.json', 'utf8'))
const JPEG = Uint8Array.from({ length: 5000 }, (_, i) => [0xff, 0xd8, 0xff, 0xe0][i] ?? (i * 31) % 251)
const beside = () => mkdtempSync(path.join(tmpdir(), 'emberslate-backup-'))
afterEach(closeAll)

describe('a backup', () => {
  it(
    'made while five write has all that was acknowledged before it began, whole lines only, and comes back into an empty folder',
    async () => {
      const data = freshFolder()
      const made = await createShoot(DOCUMENT, 'write-000001')
      const shoot = made.ok ? made.value.id : ''
      const { name } = await keepPhoto(shoot, JPEG)
      const { secret } = await openOwnerSession()
      let [minute, version, isOver] = [0, 1, false]
      const acknowledged: string[] = []
      const write = async () => {
        while (!isOver) {
          const lines = [1, 2, 3].map(() => reading(minute++, 20).document)
          await appendLog(shoot, instant(1_800_000_000_000), lines)
          acknowledged.push(...lines.map(({ id }) => String(id)))
        }
      }
      const save = async () => {
        while (!isOver) {
          await saveShoot(shoot, { ...DOCUMENT, title: `Version ${version + 1}` }, `write-long-${version}`)
          version++
        }
      }
      const writers = [write(), write(), write(), write(), save()]
      await expect.poll(() => acknowledged.length > 30 && version > 3, { timeout: LONG }).toBe(true)
      const [before, atVersion] = [[...acknowledged], version]
      const file = path.join(beside(), 'all.zip')
      expect(await backUp(data, file)).toMatchObject({ shoots: 1, photos: 1 })
      isOver = true
      await Promise.all(writers)
      expect(acknowledged.length).toBeGreaterThan(before.length)
      expect(statSync(file).mode & 0o777).toBe(0o600)
      await closeAll()

      const folder = path.join(beside(), 'data')
      expect(await restoreInto(folder, file)).toMatchObject({ shoots: 1, notes: [] })
      await reopen(folder)
      const ids = (await loadLog(shoot, 0)).map(({ document }) => String(document.id))
      expect(before.filter((id) => !ids.includes(id))).toEqual([])
      expect(new Set(ids).size).toBe(ids.length)
      expect((await loadShoot(shoot))?.version).toBeGreaterThanOrEqual(atVersion)
      expect(new Uint8Array(await readPhoto(shoot, name))).toEqual(JPEG)
      expect(await sessionOf(secret)).toBeDefined()
      expect(statSync(path.join(folder, 'door', 'sessions.json')).mode & 0o777).toBe(0o600)
      // Into a folder that has something nothing is restored.
      await expect(restoreInto(folder, file)).rejects.toThrow(/has something in it already.*Move that one away/)
    },
    LONG,
  )

  it('that is cut off, changed, no backup at all, or leads out of its folder restores nothing and says why', async () => {
    const at = beside()
    const head = { 'emberslate-backup.json': strToU8('{"emberslateBackup":1,"made":"now"}') }
    const good = zipSync({ ...head, 'journal/a.ndjson': strToU8('x'.repeat(5000)) }, { level: 0 })
    const changed = Uint8Array.from(good)
    changed[good.length - 3000] = 7
    const files: Record<string, [Uint8Array, RegExp]> = {
      'cut.zip': [good.subarray(0, good.length - 40), /is no whole backup/],
      'changed.zip': [changed, /journal\/a\.ndjson in the backup is not as it was put in/],
      'other.zip': [zipSync({ 'journal/a.ndjson': strToU8('{}') }), /is no backup of Emberslate/],
      'newer.zip': [
        zipSync({ 'emberslate-backup.json': strToU8('{"emberslateBackup":2}') }),
        /made by a newer Emberslate/,
      ],
      'up.zip': [zipSync({ ...head, 'photos/../../evil.jpg': strToU8('x') }), /no whole backup|that no backup has/],
      'odd.zip': [zipSync({ ...head, 'pg/PG_VERSION': strToU8('18') }), /a part “pg\/PG_VERSION” that no backup has/],
    }
    for (const [name, [bytes, words]] of Object.entries(files)) {
      const file = path.join(at, name)
      writeFileSync(file, bytes)
      await expect(restoreInto(path.join(at, 'data'), file)).rejects.toThrow(words)
    }
    await expect(restoreInto(path.join(at, 'data'), path.join(at, 'none.zip'))).rejects.toThrow(/There is no file/)
    expect(readdirSync(at).sort()).toEqual(Object.keys(files).sort())
  })

  it('of half-written lines has the whole ones; nothing is overwritten, and with a server pg_dump is named', async () => {
    const [at, data] = [beside(), beside()]
    mkdirSync(path.join(data, 'log'))
    writeFileSync(path.join(data, 'log', 'a.ndjson'), '{"whole":1}\n{"ha')
    const file = path.join(at, 'half.zip')
    await backUp(data, file)
    const { unzipSync } = await import('fflate')
    const log = unzipSync(new Uint8Array(readFileSync(file)))['log/a.ndjson']
    expect(Buffer.from(log as Uint8Array).toString()).toBe('{"whole":1}\n')
    process.env.EMBERSLATE_DATA = data
    const said: string[] = []
    const write = process.stderr.write
    process.stderr.write = (text: unknown) => said.push(String(text)) > 0
    try {
      process.env.DATABASE_URL = ''
      expect(await backupCommand([file])).toBe(1)
      process.env.DATABASE_URL = 'postgresql://127.0.0.1/none'
      expect(await backupCommand([path.join(at, 'other.zip')])).toBe(1)
    } finally {
      process.stderr.write = write
      process.env.DATABASE_URL = ''
    }
    expect(said.join('')).toMatch(/is there already.*nothing was overwritten/)
    expect(said.join('')).toContain('pg_dump --format=custom')
    rmSync(data, { recursive: true })
  })
})
