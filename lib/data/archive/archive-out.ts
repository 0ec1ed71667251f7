import 'server-only'
import { createHash } from 'node:crypto'
import { Zip, ZipDeflate } from 'fflate'
import { BorderError } from '../border-error'
import { database } from '../client'
import { keptForecasts } from '../forecast-journal'
import { loadLog } from '../load-log'
import { loadShoot } from '../load-shoot'
import { photosOf, readPhoto } from '../photos'
import { headText, PARTS, PHOTOS, shootText } from './archive'

/** The same day for every part of every archive: what is the same must be the same to the byte. */
const NO_DAY = new Date(1980, 0, 1)
const LINES_AT_ONCE = 5000
const TEXT = 6
/** Photographs are pressed already. Deflate without pressing, not stored: its blocks say where they end. */
const PLAIN = 0

interface Part {
  readonly name: string
  readonly level: typeof TEXT | typeof PLAIN
  readonly pieces: AsyncIterable<Uint8Array> | Iterable<Uint8Array>
}
const bytes = (text: string) => new TextEncoder().encode(text)
const text = (name: string, pieces: Part['pieces']): Part => ({ name, level: TEXT, pieces })
const ndjson = (lines: readonly unknown[]) => bytes(lines.map((line) => `${JSON.stringify(line)}\n`).join(''))

/** The whole shoot as one zip: every version, the log, the forecasts of the day and the photographs, a piece at a time. */
export async function* archiveOf(shootId: string): AsyncGenerator<Uint8Array> {
  const saved = await loadShoot(shootId)
  if (!saved) throw new BorderError('not-found')
  yield* zipped(partsOf(shootId, saved.document))
}

async function* partsOf(shootId: string, document: unknown): AsyncGenerator<Part> {
  yield text(PARTS.head, [bytes(headText(shootId))])
  yield text(PARTS.shoot, [bytes(shootText(document))])
  yield text(PARTS.versions, versionsOf(shootId))
  yield text(PARTS.log, logOf(shootId))
  yield text(PARTS.forecasts, [bytes(await keptForecasts(shootId))])
  for (const name of await photosOf(shootId))
    yield { name: PHOTOS + name, level: PLAIN, pieces: [await readPhoto(shootId, name)] }
}

async function* versionsOf(shootId: string): AsyncGenerator<Uint8Array> {
  const { prisma } = await database()
  for (let after = 0; ; ) {
    const rows = await prisma.shootVersion.findMany({
      where: { shootId, version: { gt: after } },
      orderBy: { version: 'asc' },
      take: 50,
    })
    if (rows.length === 0) return
    after = rows.at(-1)?.version ?? after
    yield ndjson(
      rows.map(({ version, writeId, at, undoOf, document }) => ({
        version,
        writeId,
        at: at.getTime(),
        ...(undoOf === null ? {} : { undoOf }),
        document,
      })),
    )
  }
}

async function* logOf(shootId: string): AsyncGenerator<Uint8Array> {
  for (let since = 0; ; ) {
    const lines = await loadLog(shootId, since, LINES_AT_ONCE)
    if (lines.length === 0) return
    since = lines.at(-1)?.position ?? since
    yield ndjson(lines)
  }
}

async function* zipped(parts: AsyncIterable<Part>): AsyncGenerator<Uint8Array> {
  const ready: Uint8Array[] = []
  const zip = new Zip((fault, chunk) => {
    if (fault) throw fault
    ready.push(chunk)
  })
  for await (const { name, level, pieces } of parts) {
    const entry = new ZipDeflate(name, { level })
    entry.mtime = NO_DAY
    zip.add(entry)
    for await (const piece of pieces) {
      entry.push(piece)
      yield* ready.splice(0)
    }
    entry.push(new Uint8Array(0), true)
    yield* ready.splice(0)
  }
  zip.end()
  yield* ready.splice(0)
}

/** What two archives of the same have in common. */
export async function archiveHash(pieces: AsyncIterable<Uint8Array>): Promise<string> {
  const hash = createHash('sha256')
  for await (const piece of pieces) hash.update(piece)
  return hash.digest('hex')
}
