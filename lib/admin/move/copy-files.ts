import { createHash } from 'node:crypto'
import { readdir, readFile } from 'node:fs/promises'
import path from 'node:path'
import { blobsOnDisk, blobsOnServer } from '../../data/blobs'
import { linesOnDisk, linesOnServer } from '../../data/line-file'
import { type Sql, within } from '../../data/server/server-sql'

/** The certificate of the set; on a server the reverse proxy has its own. */
const STAYS = 'tls.json'
const DOOR = 'door'
const PHOTOS = 'photos'

const lost = (what: string) => new Error(`${what} did not come over whole. Nothing was moved; please report this.`)
const namesIn = (folder: string) =>
  readdir(folder).catch((fault: NodeJS.ErrnoException) => {
    if (fault.code === 'ENOENT') return [] as string[]
    throw fault
  })

/** Owner, links, keys and sessions: phones that are in stay in. */
export async function copyDoor(folder: string, to: Sql): Promise<number> {
  const names = (await namesIn(path.join(folder, DOOR))).filter((name) => name.endsWith('.json') && name !== STAYS)
  for (const name of names) {
    const file = path.join(folder, DOOR, name)
    const content = oneLine(file, await readFile(file, 'utf8'))
    const [kept] = await to<{ readonly content: string }>(
      `INSERT INTO "SmallFile" ("name", "content", "revision") VALUES ($1, $2::json, 1)
       ON CONFLICT ("name") DO UPDATE SET "content" = excluded."content", "revision" = 1
       RETURNING "content"::text AS "content"`,
      [`${DOOR}/${name}`, content],
    )
    if (kept?.content !== content) throw lost(file)
  }
  return names.length
}
function oneLine(file: string, text: string): string {
  try {
    return JSON.stringify(JSON.parse(text))
  } catch {
    throw new Error(`${file} does not read. Mend it, or move it away, then start again; nothing was moved.`)
  }
}

/** The files of lines in a folder; what a power cut left half written was never confirmed, and stays behind. */
export async function copyLines(folder: string, name: string, to: Sql): Promise<number> {
  const [here, there] = [linesOnDisk(folder), linesOnServer(within(to))]
  let count = 0
  for (const file of await here.filesIn(name)) {
    const lines = (await here.read(file)).filter(isWhole)
    await there.append(file, lines)
    if ((await there.read(file)).join('\n') !== lines.join('\n')) throw lost(file)
    count += lines.length
  }
  return count
}
function isWhole(line: string): boolean {
  try {
    JSON.parse(line)
    return true
  } catch {
    return false
  }
}

export interface MovedPhotos {
  readonly photos: number
  readonly bytes: number
}
export async function copyPhotos(folder: string, to: Sql): Promise<MovedPhotos> {
  const [here, there] = [blobsOnDisk(folder), blobsOnServer(within(to))]
  let [photos, bytes] = [0, 0]
  for (const shoot of await namesIn(path.join(folder, PHOTOS))) {
    const own = `${PHOTOS}/${shoot}`
    for (const name of await here.names(own)) {
      const photo = (await here.read(own, name)) as Buffer
      await there.put(own, name, photo)
      const [kept] = await to<{ readonly hash: string }>(
        `SELECT encode(sha256("bytes"), 'hex') AS "hash" FROM "Blob" WHERE "folder" = $1 AND "name" = $2`,
        [own, name],
      )
      if (kept?.hash !== createHash('sha256').update(photo).digest('hex')) throw lost(`${own}/${name}`)
      photos += 1
      bytes += photo.length
    }
  }
  return { photos, bytes }
}
