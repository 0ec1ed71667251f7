import 'server-only'
import type { Entry, ZipFile } from 'yauzl'
import { z } from 'zod'
import { LARGEST_PHOTO_BYTES, photoName, photoTypeOf } from '../../log/photo-name'
import { readEntry } from '../../log/read-entry'
import { parseShoot } from '../../plan/parse'
import type { Problem } from '../../refusals'
import { isAway } from '../away'
import { BorderError } from '../border-error'
import { database, type Tx } from '../client'
import { requireRoom } from '../folder/disk-room'
import { appendToJournal, type JournalEntry, VERSION_LINE } from '../folder/journal'
import { appendToLogJournal, type KeptLine, LOG_LINE, setLogAside } from '../folder/log-journal'
import { writeVersion } from '../folder/put-back'
import { writeLines } from '../folder/put-back-log'
import { putForecasts } from '../forecast-journal'
import { loadShoot } from '../load-shoot'
import { notTaken } from '../not-taken'
import { putPhoto } from '../photos'
import { sayFault } from '../say'
import { sqlOf } from '../server/server-sql'
import { inTurn } from '../turns'
import { unsettled } from '../unsettled'
import { HEAD, PARTS, PHOTOS } from './archive'
import { archiveHash, archiveOf } from './archive-out'
import { forgetPieces, takenUnder, type Uploaded, uploaded } from './archive-upload'
import { bytesOf, entriesOf, openZip, refuse } from './archive-zip'

const MOST_TEXT = 300_000_000
/** What is taken into a folder is written to its journals, to the database's log, and to its tables. */
const COPIES = 3
/** Faults that are listed; more of them say nothing more. */
const MOST_FAULTS = 20

export interface TakenIn {
  readonly id: string
  readonly became: 'kept' | 'known'
}
interface Texts {
  readonly id: string
  readonly versions: readonly Omit<JournalEntry, 'shootId'>[]
  readonly lines: readonly KeptLine[]
  readonly forecasts: string
  /** Of all these as they stand in the archive, unpacked. */
  readonly bytes: number
}

/**
 * Takes an uploaded archive in under its own id, or as a copy under one that follows from its bytes. The same archive twice
 * is one shoot; one whose shoot is here already and has gone on otherwise is refused, so that nothing is overwritten.
 */
export async function takeArchive(upload: string, copy: boolean): Promise<TakenIn> {
  try {
    const taken = await take(await uploaded(upload), copy)
    await forgetPieces(upload, taken.id, copy)
    return taken
  } catch (fault) {
    // Asked twice: the other one has taken it in, and its pieces may have gone while we read them.
    const id = await takenUnder(upload, copy)
    if (id === null) throw fault
    return { id, became: 'known' }
  }
}

async function take(uploaded: Uploaded, copy: boolean): Promise<TakenIn> {
  const hash = await archiveHash(uploaded.bytes())
  const zip = await openZip(uploaded)
  const entries = await entriesOf(zip)
  const texts = await readTexts(zip, entries)
  const id = copy ? hash.slice(0, 12) : texts.id
  const here = await takenBefore(id, texts, hash, copy)
  if (here) return here
  // Photographs first and the versions last: until these stand in their journal there is no such shoot here.
  for (const entry of entries.values())
    if (entry.fileName.startsWith(PHOTOS))
      await keep(id, entry.fileName, await bytesOf(zip, entry, LARGEST_PHOTO_BYTES))
  // Asked again in turn: the same archive may have been sent twice at once.
  return inTurn(id, async (tx) => {
    const here = await takenBefore(id, texts, hash, copy, tx)
    if (here) return here
    const { folder } = await database()
    return unsettled(() => commit(tx, folder, id, texts))
  })
}

async function takenBefore(id: string, texts: Texts, hash: string, copy: boolean, tx?: Tx): Promise<TakenIn | null> {
  const here = await loadShoot(id, undefined, tx)
  if (!here) return null
  if (copy || (await archiveHash(archiveOf(id))) === hash) return { id, became: 'known' }
  const had = texts.versions.at(-1)?.version
  throw new BorderError('already-here', {
    sentence: `This shoot is here already, as “${here.document.title}”, and is not as in the archive: here it is at version ${here.version}, there at ${had}. Take the archive in as a copy, or leave it.`,
  })
}

/** In its turn. In a folder journals come first, and the versions last in them; a server takes all of it or nothing. */
async function commit(tx: Tx, folder: string | null, shootId: string, texts: Texts): Promise<TakenIn> {
  const takeBacks = folder === null ? [] : await journal(folder, shootId, texts)
  try {
    if (folder === null) await putForecasts(shootId, texts.forecasts, sqlOf(tx))
    for (const version of texts.versions) await writeVersion(tx, { shootId, ...version })
    await writeLines(tx, shootId, texts.lines)
  } catch (fault) {
    if (folder === null && isAway(fault)) throw fault
    sayFault('archive-refused', fault)
    // Left in a journal, what the database does not take would stop every later start.
    for (const takeBack of takeBacks.reverse()) await takeBack()
    if (folder !== null) await tx.shoot.deleteMany({ where: { id: shootId } })
    throw refuse('The archive holds something that cannot be kept; nothing of it was taken in. Save it again.')
  }
  return { id: shootId, became: 'kept' }
}

async function journal(folder: string, shootId: string, { versions, lines, forecasts, bytes }: Texts) {
  const takeBacks: (() => Promise<void>)[] = []
  try {
    await requireRoom(folder, 'The archive was not taken in', COPIES * bytes)
    await setLogAside(folder, shootId)
    await putForecasts(shootId, forecasts)
    if (lines.length > 0) takeBacks.push(await appendToLogJournal(folder, shootId, lines))
    const full = versions.map((one) => ({ shootId, ...one }))
    takeBacks.push(await appendToJournal(folder, shootId, full))
  } catch (fault) {
    for (const takeBack of takeBacks.reverse()) await takeBack().catch(() => undefined)
    return notTaken((why) => `The disk did not take the archive (${why}); there is no such shoot here yet.`)(fault)
  }
  return takeBacks
}

async function readTexts(zip: ZipFile, entries: ReadonlyMap<string, Entry>): Promise<Texts> {
  const textOf = async (name: string) => (await bytesOf(zip, entries.get(name) as Entry, MOST_TEXT)).toString('utf8')
  const head = HEAD.safeParse(jsonOf(await textOf(PARTS.head)))
  if (!head.success) throw refuse('archive.json does not say which shoot this is. Save the archive again.')
  const faults: Problem[] = []
  const parts = [PARTS.versions, PARTS.log, PARTS.forecasts]
  const bytes = parts.reduce((sum, name) => sum + (entries.get(name)?.uncompressedSize ?? 0), 0)
  const read = async <T>(name: string, of: (value: unknown, pointer: string) => T | readonly Problem[]) =>
    (await textOf(name)).split('\n').flatMap((line, i) => {
      if (line === '' || faults.length >= MOST_FAULTS) return []
      const one = of(jsonOf(line), `/${name}/${i + 1}`)
      if (!Array.isArray(one)) return [one as T]
      faults.push(...one)
      return []
    })
  const versions = await read(PARTS.versions, versionOf)
  const lines = await read(PARTS.log, lineOf)
  if (versions.length === 0 && faults.length === 0) throw refuse('The archive has no version of the shoot.')
  faults.push(...disorder(PARTS.versions, versions, 'version', 'writeId'))
  faults.push(
    ...disorder(
      PARTS.log,
      lines.map(({ position, document }) => ({ position, id: document.id })),
      'position',
      'id',
    ),
  )
  if (faults.length > 0) throw refuse('The archive has faults. Each is listed with its place.', faults)
  return { id: head.data.id, versions, lines, forecasts: await textOf(PARTS.forecasts), bytes }
}

const jsonOf = (text: string): unknown => {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}
const at = (pointer: string, problems: readonly Problem[]) =>
  problems.map((one) => ({ ...one, pointer: `${pointer}${one.pointer}` }))

/** Whole numbers and times as the database holds them. */
const MOST_COUNT = 2 ** 31 - 1
const TIME = z.number().min(Date.parse('0000-01-01')).max(Date.parse('9999-12-31T23:59:59.999Z'))
const VERSION = VERSION_LINE.omit({ shootId: true })
  .extend({ version: z.number().int().min(1).max(MOST_COUNT), at: TIME })
  // An undo of itself or of what is yet to come would never find the version that it shows.
  .refine(({ version, undoOf }) => undoOf === undefined || (undoOf > 1 && undoOf < version))
const KEPT_LINE = LOG_LINE.extend({ position: z.number().int().min(1).max(MOST_COUNT), received: TIME, sent: TIME })

function versionOf(value: unknown, pointer: string): z.output<typeof VERSION> | readonly Problem[] {
  const line = VERSION.safeParse(value)
  if (!line.success) return [{ pointer, sentence: 'This line is no saved version of a shoot.' }]
  const read = parseShoot(line.data.document)
  return read.ok ? line.data : at(`${pointer}/document`, read.problems)
}
function lineOf(value: unknown, pointer: string): KeptLine | readonly Problem[] {
  const line = KEPT_LINE.safeParse(value)
  if (!line.success) return [{ pointer, sentence: 'This line is no line of a slate log.' }]
  const read = readEntry(line.data.document)
  return read.ok ? line.data : at(`${pointer}/document`, read.problems)
}

/** Lines count on, and no two of them are the same one. */
function disorder<T>(name: string, lines: readonly T[], count: keyof T, own: keyof T): Problem[] {
  const seen = new Set<unknown>()
  return lines.flatMap((line, i) => {
    const before = lines[i - 1]
    const fine = (!before || before[count] < line[count]) && !seen.has(line[own])
    seen.add(line[own])
    return fine
      ? []
      : [{ pointer: `/${name}/${i + 1}`, sentence: 'This line stands there twice, or out of its order.' }]
  })
}

async function keep(shootId: string, part: string, bytes: Buffer): Promise<void> {
  const name = part.slice(PHOTOS.length)
  const type = photoTypeOf(bytes)
  if (type === null || photoName(bytes, type) !== name)
    throw refuse(`${part} is not the photograph that its name says.`)
  await putPhoto(shootId, name, bytes)
}
