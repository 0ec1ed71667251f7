/**
 * A server's part in a child process that is killed. `write N`: opens the database, says what it holds, then five crew
 * members live minute N of a scripted day until the end. `archive FILE`: writes the shoot's archive there, too. `take FROM
 * FILE`: takes one in first. A line of output each: {"open": …} once, {"acknowledged": […]} for each answer.
 */

import { randomBytes } from 'node:crypto'
import { readFileSync, writeFileSync, writeSync } from 'node:fs'
import { appendLog } from '../../lib/data/append-log'
import { takeArchive } from '../../lib/data/archive/archive-in'
import { archiveOf } from '../../lib/data/archive/archive-out'
import { addPiece } from '../../lib/data/archive/archive-upload'
import { database } from '../../lib/data/client'
import { createShoot, shootIdFrom } from '../../lib/data/create-shoot'
import { loadLog } from '../../lib/data/load-log'
import { loadShoot } from '../../lib/data/load-shoot'
import { keepPhoto, photosOf } from '../../lib/data/photos'
import { saveShoot } from '../../lib/data/save-shoot'
import { undoShoot } from '../../lib/data/undo-shoot'
import { entryId } from '../../lib/log/entry-id'
import { whenText } from '../../lib/log/fields'
import { MOMENT_IDS } from '../../lib/model/moment-ids'
import { instant } from '../../lib/units'

const SHOOT = {
  emberslate: 1,
  title: 'Under writes',
  date: '2027-05-15',
  zone: 'Europe/Dublin',
  place: { lat: 53.35, lon: -6.26 },
  cooks: [
    {
      id: 'hero',
      roast: { cut: 'lamb-leg-bone-in', mass: '3.2 kg', start: '4 °C' },
      cooker: { kind: 'oven' },
      stages: [
        { do: 'preheat', at: '150 °C' },
        { do: 'roast', at: '150 °C', until: { core: '55 °C' } },
        { do: 'rest', until: { after: '15 min' } },
      ],
    },
  ],
}
const WRITE_ID = 'kill-test-shoot'
const SHOOT_ID = shootIdFrom(WRITE_ID)
const PHOTO_BYTES = 20_000
const DAY_START = Date.parse('2027-05-15T09:00Z')
const MINUTE_MS = 60_000

const [mode = '', argument = '', file = argument] = process.argv.slice(2)
const say = (what: object) => writeSync(1, `${JSON.stringify(what)}\n`)
/** Under which it is told, and looked for: an entry by its id, a version by its write, a photograph by its name. */
const acknowledged = (...names: string[]) => say({ acknowledged: names })

const fresh = () => entryId(instant(Date.now()), randomBytes(10))
const chance = (below: number) => (randomBytes(2).readUInt16BE() * below) >> 16
const minute = Number(argument)
const scripted = () => whenText(instant(DAY_START + minute * MINUTE_MS + chance(MINUTE_MS)))
const entry = (device: string, what: object) => ({ id: fresh(), at: scripted(), by: { device }, ...what })

/** Each sends the last it was told of once more, as a phone's outbox does. */
async function logs(device: string, next: () => readonly object[]): Promise<never> {
  let again: { id: string }[] = []
  for (;;) {
    const made = next().map((what) => entry(device, what))
    const { entries } = await appendLog(SHOOT_ID, instant(Date.now()), [...again, ...made])
    if (entries.some(({ became }) => became === 'refused')) throw new Error(JSON.stringify(entries))
    acknowledged(...made.map(({ id }) => id))
    again = made.slice(0, 1)
  }
}
const reading = () => ({ kind: 'reading', cook: 'hero', sensor: 'core', temp: `${chance(4000) / 100} °C` })
const mark = () => ({ kind: 'mark', cook: 'hero', moment: MOMENT_IDS[minute % MOMENT_IDS.length] })
const take = () => ({ kind: 'take', shot: 'first-cut', take: 1 + chance(9), camera: 'A', roll: 'start' })

/** The desk saves, and now and then thinks better of it. */
async function edits(): Promise<never> {
  for (;;) {
    const writeId = `desk-${fresh()}`
    const now = await loadShoot(SHOOT_ID)
    if (now?.canUndo && chance(4) === 0) await undoShoot(SHOOT_ID, writeId)
    else {
      const saved = await saveShoot(
        SHOOT_ID,
        { ...SHOOT, title: `Minute ${minute}, ${writeId}` },
        writeId,
        now?.version,
      )
      if (!saved.ok) throw new Error(JSON.stringify(saved.problems))
    }
    acknowledged(writeId)
  }
}
/** A picture, and the note that names it. */
async function photographs(): Promise<never> {
  for (;;) {
    const bytes = Uint8Array.from([0xff, 0xd8, 0xff, 0xd9, ...randomBytes(PHOTO_BYTES)])
    const { name } = await keepPhoto(SHOOT_ID, bytes)
    acknowledged(name)
    const note = entry('phone-4', { kind: 'note', text: 'as it stood', cook: 'hero', state: 'raw', photo: name })
    const { entries } = await appendLog(SHOOT_ID, instant(Date.now()), [note])
    if (entries.some(({ became }) => became === 'refused')) throw new Error(JSON.stringify(entries))
    acknowledged(note.id)
  }
}

async function held() {
  const { prisma, notes } = await database()
  const lines = await loadLog(SHOOT_ID, 0)
  const where = { shootId: SHOOT_ID }
  const versions = await prisma.shootVersion.findMany({ where, select: { writeId: true, version: true } })
  return {
    open: [
      ...lines.map(({ document }) => document.id),
      ...versions.map(({ writeId }) => writeId),
      ...(await photosOf(SHOOT_ID)),
    ],
    places: [
      ...lines.map(({ position }) => `line ${position}`),
      ...versions.map(({ version }) => `version ${version}`),
    ],
    notes,
  }
}

async function archive() {
  const pieces: Uint8Array[] = []
  for await (const piece of archiveOf(SHOOT_ID)) pieces.push(piece)
  writeFileSync(file, Buffer.concat(pieces))
}
async function takeIn() {
  const bytes = readFileSync(argument)
  const PIECE = 4_000_000
  for (let from = 0; from < bytes.length; from += PIECE)
    await addPiece('kill-archive', from, bytes.subarray(from, from + PIECE))
  await takeArchive('kill-archive', false)
}

if (mode === 'take') await takeIn()
else {
  const made = await createShoot(SHOOT, WRITE_ID)
  if (!made.ok) throw new Error(JSON.stringify(made.problems))
}
say(await held())
if (mode !== 'write') {
  await archive()
  process.exit(0)
}
await Promise.all([
  logs('logger-1', () => Array.from({ length: 1 + chance(4) }, reading)),
  logs('phone-1', () => [mark()]),
  logs('phone-2', () => [take(), take()]),
  edits(),
  photographs(),
])
