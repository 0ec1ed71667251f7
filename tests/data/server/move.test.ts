import { readFileSync, rmSync, writeFileSync } from 'node:fs'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { moveFolder } from '../../../lib/admin/move/move-folder'
import { appendLog } from '../../../lib/data/append-log'
import { takeArchive } from '../../../lib/data/archive/archive-in'
import { archiveOf } from '../../../lib/data/archive/archive-out'
import { addPiece } from '../../../lib/data/archive/archive-upload'
import { database } from '../../../lib/data/client'
import { keepLesson, keptCookers } from '../../../lib/data/cookers'
import { createShoot } from '../../../lib/data/create-shoot'
import { linkByCode, makeLink } from '../../../lib/data/door/links'
import { appendLines } from '../../../lib/data/line-file'
import { listShoots } from '../../../lib/data/list-shoots'
import { keepPhoto } from '../../../lib/data/photos'
import { plantDemo } from '../../../lib/data/plant-demo'
import { saveShoot } from '../../../lib/data/save-shoot'
import { undoShoot } from '../../../lib/data/undo-shoot'
import { instant } from '../../../lib/units'
import { copyOfMigrated } from '../../migrated-database'
import { reading } from '../../unit/log/lines'
import { closeAll, freshFolder, reopen } from '../real-database'

const DOCUMENT = JSON.parse(readFileSync('tests/fixtures/shoots/minimal.json', 'utf8'))
const HERE = { owner: true, grants: [], by: null, device: null }
const PHOTO = Uint8Array.from({ length: 5000 }, (_, i) => [0xff, 0xd8, 0xff, 0xe0][i] ?? i % 251)
let [folder, url, shoot, code] = ['', '', '', '']

beforeEach(async () => {
  folder = freshFolder()
  url = await copyOfMigrated()
  const made = await createShoot({ ...DOCUMENT, title: 'Épaule, ½ rôtie “x”' }, 'write-000001')
  shoot = made.ok ? made.value.id : ''
  await saveShoot(shoot, DOCUMENT, 'write-000002', 1)
  await undoShoot(shoot, 'write-000003')
  const lines = Array.from({ length: 5 }, (_, i) => reading(i, 10 + i).document)
  await appendLog(shoot, instant(1_800_000_000_000), lines)
  await appendLines(`forecasts/${shoot}`, [FORECAST, '{"half'])
  const belief = { mean: 0.02, sd: 0.06, before: 0.08 }
  await keepLesson(
    'Kettle',
    'kettle-charcoal',
    { cook: 'a', date: '2027-05-15', level: belief, pace: belief, tie: 0 },
    1,
  )
  await keepPhoto(shoot, PHOTO)
  const link = { shoot, person: 'cam', role: 'crew' as const, expires: Date.now() + 3_600_000 }
  code = (await makeLink(link)).code
})
afterEach(closeAll)

const FORECAST = '{"id":"f","at":1,"after":null,"forecast":{"reason":"reading","expected":[]}}'
async function archived(): Promise<Buffer> {
  const pieces: Uint8Array[] = []
  for await (const piece of archiveOf(shoot)) pieces.push(piece)
  return Buffer.concat(pieces)
}

describe('a move to a server', () => {
  it('takes all of a folder along, and each shoot back by its archive is the same to the byte', async () => {
    const [file, list, cookers] = [await archived(), await listShoots(HERE), await keptCookers()]
    await closeAll()
    // The demo shoots of a first start are in nobody's way.
    await reopen(url)
    await plantDemo()
    await closeAll()
    expect(await moveFolder(folder, url)).toMatchObject({
      ...{ shoots: 1, versions: 3, lines: 5, forecasts: 1, cookers: 1, photos: 1, bytes: 5000, door: 1 },
    })
    await reopen(url)
    expect(await listShoots(HERE)).toEqual(list)
    expect(await keptCookers()).toEqual(cookers)
    expect((await linkByCode(code))?.person).toBe('cam')
    expect(file.equals(await archived())).toBe(true)
    await closeAll()
    freshFolder()
    await addPiece('upload-000001', 0, file)
    await takeArchive('upload-000001', false)
    expect(file.equals(await archived())).toBe(true)
  })

  it('leaves the server empty where it fails half way, and goes through when it is started again', async () => {
    await closeAll()
    writeFileSync(`${folder}/door/broken.json`, '{"half')
    await expect(moveFolder(folder, url)).rejects.toThrow(/broken\.json does not read.*nothing was moved/)
    const { prisma } = await reopen(url)
    expect([await prisma.shoot.count(), await prisma.smallFile.count(), await prisma.blob.count()]).toEqual([0, 0, 0])
    await closeAll()
    rmSync(`${folder}/door/broken.json`)
    expect((await moveFolder(folder, url)).shoots).toBe(1)
    await expect(moveFolder(folder, url)).rejects.toThrow(/not empty: it holds 1 shoot and 4 kept files.*createdb/)
  })

  it('is refused while the app holds the folder, and from a folder that keeps nothing', async () => {
    await database()
    await expect(moveFolder(folder, url)).rejects.toThrow(/in use by another Emberslate/)
    await expect(moveFolder('/tmp/none-such', url)).rejects.toThrow(/nothing to move in \/tmp\/none-such/)
  })
})
