import { createHash } from 'node:crypto'
import { mkdtempSync, readdirSync, readFileSync, realpathSync, renameSync, rmSync, symlinkSync } from 'node:fs'
import net from 'node:net'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterEach, describe, expect, it } from 'vitest'
import { appendLog } from '../../../lib/data/append-log'
import { createShoot } from '../../../lib/data/create-shoot'
import { openOwnerSession } from '../../../lib/data/door/sessions'
import { holderOf, lockFolder } from '../../../lib/data/folder/lock'
import { loadLog } from '../../../lib/data/load-log'
import { instant } from '../../../lib/units'
import { reading } from '../../unit/log/lines'
import { closeAll, freshFolder } from '../real-database'

const DOCUMENT = JSON.parse(readFileSync('tests/fixtures/shoots/minimal.json', 'utf8'))
afterEach(closeAll)

describe('a data folder', () => {
  it('is refused to a second process by its own path, through a link, and where it was moved to', async () => {
    const at = mkdtempSync(path.join(tmpdir(), 'emberslate-lock-'))
    const [folder, link, moved] = ['data', 'link', 'moved'].map((name) => path.join(at, name)) as [
      string,
      string,
      string,
    ]
    renameSync(mkdtempSync(path.join(at, 'new-')), folder)
    const unlock = await lockFolder(folder)
    symlinkSync(folder, link)
    await expect(lockFolder(folder)).rejects.toThrow(
      /is in use by another Emberslate \(process \d+\). Stop that one, or set/,
    )
    await expect(lockFolder(link)).rejects.toThrow(/is in use/)
    renameSync(folder, moved)
    await expect(lockFolder(moved)).rejects.toThrow(/is in use/)
    unlock()
    const again = await lockFolder(moved)
    again()
  })

  it('is refused while the release before this one, which locks by the path, has it open', async () => {
    const folder = realpathSync(mkdtempSync(path.join(tmpdir(), 'emberslate-lock-')))
    const id = `emberslate-${createHash('sha256').update(folder).digest('hex').slice(0, 24)}`
    const older = net.createServer((caller) => caller.end('4711'))
    await new Promise<void>((listening) => {
      older.listen(process.platform === 'linux' ? `\0${id}` : path.join(tmpdir(), `${id}.sock`), listening)
    })
    await expect(lockFolder(folder)).rejects.toThrow(/is in use by another Emberslate \(process 4711\)/)
    expect(await holderOf(folder)).toBe('4711')
    older.close()
    const unlock = await lockFolder(folder)
    unlock()
  })

  it('that is moved away while the app runs takes no more writes, begins nothing anew in its place, and goes on when it is back', async () => {
    const folder = freshFolder()
    const made = await createShoot(DOCUMENT, 'write-000001')
    const shoot = made.ok ? made.value.id : ''
    const [first, lost, later] = [1, 2, 3].map((minute) => reading(minute, 20).document)
    const append = (document: unknown) => appendLog(shoot, instant(1_800_000_000_000), [document])
    await append(first)
    const away = `${folder}-away`
    renameSync(folder, away)
    const words = {
      code: 'disk-refused',
      message: expect.stringMatching(/moved or removed while Emberslate ran. Put it back/),
    }
    await expect(append(lost)).rejects.toMatchObject(words)
    await expect(openOwnerSession()).rejects.toMatchObject(words)
    expect(readdirSync(path.dirname(folder))).not.toContain(path.basename(folder))
    renameSync(away, folder)
    expect((await append(later)).entries[0]?.became).toBe('kept')
    expect((await loadLog(shoot, 0)).map(({ document }) => document.id)).toEqual([first?.id, later?.id])
    await closeAll()
    rmSync(folder, { recursive: true })
  })
})
