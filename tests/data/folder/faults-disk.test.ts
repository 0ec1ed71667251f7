import { mkdirSync, readFileSync } from 'node:fs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { appendLog } from '../../../lib/data/append-log'
import { isAway } from '../../../lib/data/away'
import { BorderError } from '../../../lib/data/border-error'
import { database } from '../../../lib/data/client'
import { createShoot } from '../../../lib/data/create-shoot'
import { openOwnerSession, sessionOf } from '../../../lib/data/door/sessions'
import { loadLog } from '../../../lib/data/load-log'
import { loadShoot } from '../../../lib/data/load-shoot'
import { putPhoto } from '../../../lib/data/photos'
import { saveShoot } from '../../../lib/data/save-shoot'
import { instant } from '../../../lib/units'
import { putEmptyDatabase } from '../../empty-database'
import { reading } from '../../unit/log/lines'
import { closeAll, reopen } from '../real-database'
import { type SmallDisk, smallDisk } from '../small-disk'

const DOCUMENT = JSON.parse(readFileSync('tests/fixtures/shoots/minimal.json', 'utf8'))
const SENT = instant(1_800_000_000_000)
let disk: SmallDisk
let shoot = ''
let made = 0
const one = () => reading(made++, 20).document
const append = (...documents: unknown[]) => appendLog(shoot, SENT, documents)
const kept = async () => (await loadLog(shoot, 0)).map(({ document }) => document.id)
const refusal = (work: Promise<unknown>): Promise<string> =>
  work.then(
    () => 'taken',
    (fault) => (fault instanceof BorderError ? `${fault.status} ${fault.message}` : `no refusal: ${fault}`),
  )

beforeAll(async () => {
  disk = smallDisk(140)
  mkdirSync(disk.folder)
  putEmptyDatabase(disk.folder)
  await reopen(disk.folder)
  const created = await createShoot(DOCUMENT, 'write-000001')
  shoot = created.ok ? created.value.id : ''
})
afterAll(async () => {
  await closeAll()
  disk.remove()
})

/** All that the app writes, tried once each. */
const tries = () =>
  Promise.all(
    [
      saveShoot(shoot, { ...DOCUMENT, title: 'Refused' }, `write-full-${made}`),
      append(one()),
      putPhoto(shoot, `${String(made).padStart(64, '0')}.jpg`, new Uint8Array(200_000)),
      openOwnerSession(),
    ].map(refusal),
  )

describe('a disk that is full', () => {
  it('takes nothing new, says so each time, still shows what is there, and goes on once there is room', async () => {
    const first = one()
    await append(first)
    const { secret } = await openOwnerSession()
    disk.fill()
    for (const said of await tries()) expect(said).toMatch(/^507 .*(full|grow).*(Free some room|limit)/)
    expect((await loadShoot(shoot))?.document.title).toBe(DOCUMENT.title)
    expect(await kept()).toEqual([first.id])
    disk.empty()
    expect(await sessionOf(secret)).toBeDefined()
    expect(await tries()).toEqual(['taken', 'taken', 'taken', 'taken'])
  })

  it('that the database itself runs into ends that database, not the process: it waits for room and opens again by itself', async () => {
    const before = await kept()
    disk.fill()
    const { prisma } = await database()
    // More than one file of the write-ahead log, in pages that are there already.
    const much = `DO $$ BEGIN FOR i IN 1..300 LOOP PERFORM pg_logical_emit_message(false, 'x', repeat('x', 100000)); END LOOP; END $$`
    const fault = await prisma.$executeRawUnsafe(much).catch((thrown) => thrown)
    expect([isAway(fault), fault]).toEqual([true, expect.anything()])
    expect(await refusal(append(one()))).toMatch(/^507 |^no refusal: .*ended itself/)
    disk.empty()
    await expect.poll(() => kept().catch((thrown) => thrown.message), { timeout: 20_000 }).toEqual(before)
    const after = one()
    expect((await append(after)).entries[0]?.became).toBe('kept')
    await closeAll()
    await reopen(disk.folder)
    expect(await kept()).toEqual([...before, after.id])
  })
})

describe('a disk that becomes read-only', () => {
  it('refuses each write with what to do, and takes them again when it can be written', async () => {
    const before = await kept()
    disk.readOnly(true)
    for (const said of await tries()) expect(said).toMatch(/^507 .*(only be read|may not write)/)
    expect(await kept()).toEqual(before)
    disk.readOnly(false)
    expect(await tries()).toEqual(['taken', 'taken', 'taken', 'taken'])
  })

  it('is told in one sentence when the app is to start on it', async () => {
    await closeAll()
    disk.readOnly(true)
    await expect(reopen(disk.folder)).rejects.toThrow(/cannot be written .* Set EMBERSLATE_DATA to a folder that can/)
    disk.readOnly(false)
  })
})
