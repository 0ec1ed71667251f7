import { readFileSync } from 'node:fs'
import { zipSync } from 'fflate'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { appendLog } from '../../lib/data/append-log'
import { takeArchive } from '../../lib/data/archive/archive-in'
import { archiveOf } from '../../lib/data/archive/archive-out'
import { addPiece } from '../../lib/data/archive/archive-upload'
import { createShoot } from '../../lib/data/create-shoot'
import { loadLog } from '../../lib/data/load-log'
import { loadShoot } from '../../lib/data/load-shoot'
import { keepPhoto, readPhoto } from '../../lib/data/photos'
import { saveShoot } from '../../lib/data/save-shoot'
import { undoShoot } from '../../lib/data/undo-shoot'
import { instant } from '../../lib/units'
import { reading } from '../unit/log/lines'
import { closeAll, freshDatabase, reopen } from './real-database'

const DOCUMENT = JSON.parse(readFileSync('tests/fixtures/shoots/minimal.json', 'utf8'))
/** A photograph whose bytes hold what marks a part in a zip file. */
const PHOTO = Uint8Array.from(
  { length: 9000 },
  (_, i) => [0xff, 0xd8, 0xff, 0xe0][i] ?? [0x50, 0x4b, 0x03, 0x04][i % 4] ?? 0,
)
const UPLOAD = 'upload-000001'
let shoot = ''
let place = ''

beforeEach(async () => {
  place = await freshDatabase()
  const made = await createShoot(DOCUMENT, 'write-000001')
  shoot = made.ok ? made.value.id : ''
  await saveShoot(shoot, { ...DOCUMENT, title: 'Épaule, ½ rôtie' }, 'write-000002', 1)
  await undoShoot(shoot, 'write-000003')
  await appendLog(
    shoot,
    instant(1_800_000_000_000),
    Array.from({ length: 3 }, (_, i) => reading(i, 10 + i).document),
  )
  await keepPhoto(shoot, PHOTO)
})
afterEach(closeAll)

async function archived(id = shoot): Promise<Buffer> {
  const pieces: Uint8Array[] = []
  for await (const piece of archiveOf(id)) pieces.push(piece)
  return Buffer.concat(pieces)
}
async function takeIn(bytes: Uint8Array, copy = false) {
  const half = bytes.length >> 1
  for (const from of [0, half, half])
    await addPiece(UPLOAD, from, bytes.subarray(from, from === 0 ? half : bytes.length))
  return takeArchive(UPLOAD, copy)
}
const faultOf = (work: Promise<unknown>) =>
  work.then(
    () => null,
    (fault) => ({ code: fault.code, said: fault.detail?.problems?.[0], sentence: fault.message as string }),
  )

describe('an archive', () => {
  it('taken in on another computer is the same shoot, and its archive the same to the byte', async () => {
    const file = await archived()
    const photo = (await keepPhoto(shoot, PHOTO)).name
    await closeAll()
    const other = await freshDatabase()
    expect(await takeIn(file)).toEqual({ id: shoot, became: 'kept' })
    await closeAll()
    await reopen(other)
    expect((await loadShoot(shoot))?.version).toBe(3)
    expect(await loadLog(shoot, 0)).toHaveLength(3)
    expect(new Uint8Array(await readPhoto(shoot, photo))).toEqual(PHOTO)
    expect(file.equals(await archived())).toBe(true)
    // It goes on from there: what is logged next stands after what came in.
    await appendLog(shoot, instant(1_800_000_009_000), [reading(9, 30).document])
    expect((await loadLog(shoot, 3)).map(({ position }) => position)).toEqual([4])
  })

  it('taken in twice is one shoot; one that has gone on is not overwritten, but may have a copy beside it', async () => {
    const file = await archived()
    expect(await takeIn(file)).toEqual({ id: shoot, became: 'known' })
    await saveShoot(shoot, { ...DOCUMENT, title: 'Gone on' }, 'write-000004', 3)
    expect((await faultOf(takeIn(file)))?.sentence).toMatch(/here already, as “Gone on”.*version 4, there at 3/)
    const copy = await takeArchive(UPLOAD, true)
    expect(copy.became).toBe('kept')
    expect((await loadShoot(copy.id))?.document.title).toBe(DOCUMENT.title)
    expect((await loadShoot(shoot))?.document.title).toBe('Gone on')
    expect(await takeIn(file, true)).toEqual({ id: copy.id, became: 'known' })
  })

  it('that is broken, or another file, is refused with a sentence, and there is no such shoot then', async () => {
    const zip = (files: Record<string, Uint8Array>) => Buffer.from(zipSync(files))
    const broken: readonly (readonly [Buffer, RegExp])[] = [
      [(await archived()).subarray(0, 300), /no whole archive/],
      [zip({ 'a.txt': new Uint8Array(3) }), /no archive of a shoot/],
      [zip({ ...parts(), 'photos/../../x.jpg': PHOTO }), /no whole archive|has a part/],
      [zip({ ...parts(), [`photos/${'0'.repeat(64)}.jpg`]: PHOTO }), /not the photograph/],
      [zip(parts({ title: 7 })), /title|text/i],
      [zip(parts({}, 2)), /twice/],
      [zip(parts({}, 1, { undoOf: 2 })), /no saved version/],
      [zip(parts({}, 1, { at: 1e300 })), /no saved version/],
      [zip(parts({}, 1, { writeId: 'write\u0000' })), /cannot be kept/],
    ]
    for (const [bytes, said] of broken) {
      const fault = await faultOf(takeIn(bytes))
      expect(fault?.code).toBe('archive-invalid')
      expect(`${fault?.sentence} ${fault?.said?.sentence}`).toMatch(said)
    }
    // Nothing of them is left that a later start would stumble over.
    await closeAll()
    await reopen(place)
    expect(await loadShoot('another')).toBeUndefined()
  })

  it('begun many times at once is begun by one after the other, and none is called a full disk', async () => {
    const begun = Array.from({ length: 12 }, (_, i) => addPiece(UPLOAD, 0, new Uint8Array(1000 + i)))
    expect(await Promise.all(begun)).toEqual(Array.from({ length: 12 }, (_, i) => 1000 + i))
  })

  it('comes in pieces that go on where the last one ended; one sent again takes the place of what stood there', async () => {
    const piece = (from: number, size: number) => addPiece(UPLOAD, from, new Uint8Array(size))
    expect([await piece(0, 10), await piece(10, 10), await piece(20, 10), await piece(10, 5)]).toEqual([10, 20, 30, 15])
    await expect(piece(20, 10)).rejects.toThrow('15 bytes of this archive are here')
    await expect(piece(12, 10)).rejects.toThrow('10 bytes of this archive are here')
    expect([await piece(15, 1), await piece(0, 3)]).toEqual([16, 3])
    await expect(takeArchive('upload-000002', false)).rejects.toThrow('Send its pieces first')
  })

  it('sent twice at once is taken in once', async () => {
    const file = Buffer.from(zipSync(parts()))
    await addPiece(UPLOAD, 0, file)
    const both = await Promise.all([takeArchive(UPLOAD, true), takeArchive(UPLOAD, true)])
    expect(both.map(({ became }) => became).sort()).toEqual(['kept', 'known'])
    expect(both[0]?.id).toBe(both[1]?.id)
  })
})

/** The parts of an archive made by hand. */
function parts(change: object = {}, times = 1, of: object = {}): Record<string, Uint8Array> {
  const text = (value: unknown) => new TextEncoder().encode(`${JSON.stringify(value)}\n`.repeat(times))
  const line = { version: 1, writeId: 'write-000009', at: 1, document: { ...DOCUMENT, ...change }, ...of }
  return {
    'archive.json': new TextEncoder().encode('{"emberslateArchive":1,"id":"another"}'),
    'shoot.json': text(DOCUMENT),
    'versions.ndjson': text(line),
    'log.ndjson': new Uint8Array(0),
    'forecasts.ndjson': new Uint8Array(0),
  }
}
