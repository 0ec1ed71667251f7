import { readdirSync, readFileSync, statSync } from 'node:fs'
import path from 'node:path'
import { unzipSync } from 'fflate'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { personCommand } from '../../lib/admin/person'
import { appendLog } from '../../lib/data/append-log'
import { archiveOf } from '../../lib/data/archive/archive-out'
import { database } from '../../lib/data/client'
import { createShoot } from '../../lib/data/create-shoot'
import { keysOf, makeKey } from '../../lib/data/door/device-keys'
import { linksOf, makeLink } from '../../lib/data/door/links'
import { openLinkSession, sessionOf } from '../../lib/data/door/sessions'
import { lastForecast } from '../../lib/data/forecast-journal'
import { keepTold } from '../../lib/data/last-told'
import { loadLog } from '../../lib/data/load-log'
import { loadShoot } from '../../lib/data/load-shoot'
import { finishErasing } from '../../lib/data/person/erase-person'
import { beginErasing, type Erasing, unfinishedErasures } from '../../lib/data/person/erasing'
import { exportPerson } from '../../lib/data/person/export-person'
import { findPerson, recordsOf } from '../../lib/data/person/person-records'
import { keepPhoto, photosOf } from '../../lib/data/photos'
import { saveShoot } from '../../lib/data/save-shoot'
import { undoShoot } from '../../lib/data/undo-shoot'
import type { LiveForecast } from '../../lib/session/session'
import { instant } from '../../lib/units'
import { putEmptyDatabase } from '../empty-database'
import { line, mark, reading } from '../unit/log/lines'
import { lambWith } from '../unit/plan/shoots'
import { closeAll, freshDatabase } from './real-database'

const CANARY = /canaria|quillfeather|555 ?0199/i
const DOCUMENT = lambWith({
  '/people/1': { id: 'canaria', name: 'Canaria Quillfeather', roles: ['camera'] },
  '/callSheet': {
    contacts: [{ name: 'Canaria', phone: '+353 87 555 0199' }],
    allergens: 'nuts (Canaria), shellfish',
    notes: 'Canaria has the keys.',
  },
})
const PHOTO = Uint8Array.from({ length: 200 }, (_, i) => [0xff, 0xd8, 0xff, 0xe0][i] ?? i)
const BEFORE = ['links', 'keys', 'guard', 'photographs']
const IN_FOLDER = ['journal', 'log', 'forecasts', 'database aside', 'database away']
const END = Date.now() + 86_400_000
const away = reading(3, 41, { person: 'canaria', device: 'phone-b' })
const lines = [
  mark(5, 'pull', { person: 'canaria' }),
  line(6, 'call-answer', { call: 'first-cut', answer: 'hand-over', to: 'canaria' }, { person: 'presenter' }),
  reading(7, 44, { device: 'canarias-probe' }),
  away,
]
let shoot = ''
/** Where there is one: a server keeps everything itself. */
let folder: string | null = null
let secret = ''

beforeEach(async () => {
  const place = await freshDatabase()
  folder = path.isAbsolute(place) ? place : null
  const made = await createShoot(
    lambWith({ '/people/1': { id: 'cana', name: 'Cana', roles: ['camera'] } }),
    'write-000001',
  )
  shoot = made.ok ? made.value.id : ''
  await saveShoot(shoot, DOCUMENT, 'write-000002', 1)
  await undoShoot(shoot, 'write-000003')
  await saveShoot(shoot, { ...DOCUMENT, title: 'Lamb, filmed by Canaria Quillfeather' }, 'write-000004', 3)
  const photo = (await keepPhoto(shoot, PHOTO)).name
  const forecast = { reason: 'Fetch Canaria Quillfeather.', expected: [] } as unknown as LiveForecast
  await keepTold(shoot, { id: 'one', at: instant(1_800_000_000_000), after: null, forecast })
  const note = line(8, 'note', { text: 'Canaria moved the lamp', photo }, { person: 'canaria' })
  await appendLog(
    shoot,
    instant(1_800_000_000_000),
    [...lines, note].map(({ document }) => document),
  )
  const { link } = await makeLink({ shoot, person: 'canaria', role: 'crew', expires: END })
  secret = (await openLinkSession([link])).secret
  await makeKey(shoot, 'canarias-probe', END)
})
afterEach(async () => {
  vi.restoreAllMocks()
  await closeAll()
})

async function found(notes = true) {
  const records = await recordsOf(shoot)
  const person = await findPerson(records, ['canaria'], notes)
  if (!person) throw new Error('Nobody was found.')
  return { records, person }
}
async function archived(): Promise<Buffer> {
  const pieces: Uint8Array[] = []
  for await (const piece of archiveOf(shoot)) pieces.push(piece)
  return Buffer.concat(pieces)
}
/** Every file of the data folder, as the letters that its bytes make. */
function filesUnder(name: string | null): { name: string; text: string }[] {
  if (name === null) return []
  if (!statSync(name).isDirectory()) return [{ name, text: readFileSync(name, 'latin1') }]
  return readdirSync(name).flatMap((inner) => filesUnder(path.join(name, inner)))
}
async function tables(): Promise<string> {
  const { prisma } = await database()
  const names = await prisma.$queryRaw<{ name: string }[]>`
    SELECT table_name AS name FROM information_schema.tables WHERE table_schema = 'public'`
  const rows = await Promise.all(
    names.map(({ name }) => prisma.$queryRawUnsafe<{ row: string }[]>(`SELECT t::text AS row FROM "${name}" t`)),
  )
  return JSON.stringify(rows)
}
const unpacked = (zip: Buffer) =>
  Object.entries(unzipSync(zip))
    .map(([name, bytes]) => `${name} ${Buffer.from(bytes).toString('utf8')}`)
    .join('\n')

/** Runs the command and hears what it says. */
async function command(...args: string[]) {
  const said: string[] = []
  for (const stream of [process.stdout, process.stderr])
    vi.spyOn(stream, 'write').mockImplementation((text) => said.push(String(text)) > 0)
  const code = await personCommand(args)
  vi.restoreAllMocks()
  return { code, said: said.join('') }
}

describe('one person', () => {
  it('is exported with all that names them or that they logged, and told what erasing would change before it does', async () => {
    const { records, person } = await found()
    const told = await exportPerson(records, person)
    expect(told.person).toMatchObject({ ids: ['canaria', 'cana'], phones: ['+353 87 555 0199'], roles: ['camera'] })
    expect(told.inShoot).toContainEqual({ at: '/people/1/name', text: 'Canaria Quillfeather', versions: [2, 2] })
    expect(told.inShoot).toContainEqual({
      at: '/callSheet/allergens',
      text: 'nuts (Canaria), shellfish',
      versions: [4, 4],
    })
    expect(told.inLog.map(({ position }) => position)).toEqual([1, 2, 4, 5])
    expect(told.devices).toEqual([{ name: 'canarias-probe', readings: 1 }])
    expect(told.photographs).toEqual(await photosOf(shoot))
    expect([told.links.length, told.keys.map(({ name }) => name)]).toEqual([1, ['canarias-probe']])

    const before = await archived()
    const { code, said } = await command('erase', '--shoot', shoot, '--person', 'canaria')
    expect(code).toBe(0)
    expect(said).toContain('canaria becomes crew-1')
    expect(said).toContain('“nuts (Canaria), shellfish” becomes “[erased], shellfish”')
    expect(said).toContain('“Canaria moved the lamp”: one word of the name')
    expect(said).toContain('The device canarias-probe with 1 reading becomes device-1.')
    expect(said).toContain('1 link with the phones')
    expect(said).toContain('Nothing was changed.')
    const other = await command('erase', '--shoot', shoot, '--person', 'canaria', '--photo', '../journal', '--yes')
    expect(other).toEqual({ code: 1, said: 'There is no photograph ../journal here. Nothing was changed.\n' })
    expect(before.equals(await archived())).toBe(true)
    expect(await linksOf(shoot)).toHaveLength(1)
  })

  it('once erased stands nowhere any more; day, order and times are as they were', async () => {
    const before = await loadLog(shoot, 0)
    const [photo = ''] = await photosOf(shoot)
    const { code, said } = await command(
      'erase',
      '--name',
      'canaria quillfeather',
      '--notes',
      '--photo',
      photo,
      '--yes',
    )
    expect([code, said]).toEqual([0, expect.stringContaining(`Done in shoot ${shoot}`)])
    const places = [
      ...filesUnder(folder)
        .filter(({ text }) => CANARY.test(text))
        .map(({ name }) => name),
      ...(CANARY.test(unpacked(await archived())) ? ['archive'] : []),
      ...(CANARY.test(await tables()) ? ['tables'] : []),
    ]
    expect(places).toEqual([])
    expect([await linksOf(shoot), await keysOf(shoot), await sessionOf(secret)]).toEqual([[], [], undefined])
    const after = await loadLog(shoot, 0)
    const course = (all: typeof after) =>
      all.map(({ position, received, sent, document: { id, at, kind } }) => [position, received, sent, id, at, kind])
    expect(course(after)).toEqual(course(before))
    expect(await photosOf(shoot)).toEqual([])
    expect((await lastForecast(shoot))?.forecast.reason).toBe('Fetch [erased].')
    const newest = await loadShoot(shoot)
    expect(newest?.version).toBe(5)
    const { prisma } = await database()
    const row = await prisma.shootVersion.findFirst({ where: { shootId: shoot, version: 5 } })
    expect(row?.writeId).toMatch(/^erasure-/)
    expect(newest?.document.people).toEqual([
      ...(DOCUMENT.people as object[]).slice(0, 1),
      { id: 'crew-1', roles: ['camera'] },
      ...(DOCUMENT.people as object[]).slice(2),
    ])
    const again = await command('erase', '--shoot', shoot, '--person', 'canaria', '--yes')
    expect(again).toEqual({ code: 1, said: expect.stringContaining('never had a person canaria') })
  }, 120_000)

  it('is erased whole however often that is cut off, and not brought back by a phone that was away', async () => {
    const { person } = await found()
    const plan = JSON.parse(JSON.stringify(person.plan)) as Erasing['plan']
    const erasing: Erasing = { shoot, at: 1_800_000_200_000, writeId: 'erasure-test', plan, photos: [] }
    await beginErasing(erasing)
    const steps: string[] = []
    for (;;) {
      const next = await finishErasing(erasing, (step) => {
        // What a start makes where there is none; here from a copy, which is quicker.
        if (step === 'database away' && folder) putEmptyDatabase(folder)
        if (steps.includes(step)) return
        steps.push(step)
        throw new Error(`cut off after ${step}`)
      }).catch((fault: Error) => fault.message)
      if (next === undefined) break
      expect(next).toBe(`cut off after ${steps.at(-1)}`)
      expect(await unfinishedErasures()).toHaveLength(1)
      // The app is opened, and goes on with what is there.
      expect((await loadShoot(shoot))?.document.emberslate).toBe(1)
    }
    expect(steps).toEqual(folder ? [...BEFORE, ...IN_FOLDER, 'records'] : [...BEFORE, 'records'])
    expect(await unfinishedErasures()).toEqual([])
    expect(await loadLog(shoot, 0)).toHaveLength(5)
    expect((await recordsOf(shoot)).versions.map(({ version }) => version)).toEqual([1, 2, 3, 4, 5])
    expect(CANARY.test(unpacked(await archived()))).toBe(false)
    expect(filesUnder(folder).filter(({ text }) => CANARY.test(text))).toEqual([])

    const fresh = line(20, 'note', { text: 'ask Canaria Quillfeather' }, { person: 'presenter' })
    const to = line(21, 'late', { for: '5 min', who: 'canaria' }, { person: 'presenter' })
    const sent = await appendLog(
      shoot,
      instant(1_800_000_100_000),
      [away, fresh, to].map(({ document }) => document),
    )
    expect(sent.entries.map(({ became }) => became)).toEqual(['known', 'kept', 'kept'])
    const [note, late] = (await loadLog(shoot, 5)).map(({ document }) => document)
    expect(note).toMatchObject({ text: 'ask [erased]' })
    expect(late).toMatchObject({ who: 'crew-1' })
  }, 120_000)
})
