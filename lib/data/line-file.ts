import 'server-only'
import { readdir, readFile, rm } from 'node:fs/promises'
import path from 'node:path'
import { databaseUrl, dataFolder } from './env'
import { appendSynced } from './folder/append-synced'
import { requireFolder } from './folder/disk-room'
import { SERVER, type Server, type Sql, within } from './server/server-sql'

/** Files that grow by lines, named by their path without its ending: "cookers/0a1b". */
export interface LineFiles {
  append(file: string, lines: readonly string[]): Promise<void>
  /** As they stand; where a power cut left half of one, the reader passes over it. */
  read(file: string): Promise<readonly string[]>
  last(file: string, most: number): Promise<readonly string[]>
  replace(file: string, lines: readonly string[]): Promise<void>
  filesIn(folder: string): Promise<readonly string[]>
}

const ENDING = '.ndjson'
const nothingThere = (fault: NodeJS.ErrnoException) => {
  if (fault.code !== 'ENOENT') throw fault
}

export function linesOnDisk(data: string): LineFiles {
  const pathOf = (file: string) => path.join(data, file + ENDING)
  const append: LineFiles['append'] = async (file, lines) => {
    if (lines.length === 0) return
    await requireFolder(data)
    await appendSynced(pathOf(file), lines)
  }
  const read: LineFiles['read'] = async (file) => {
    const text = (await readFile(pathOf(file), 'utf8').catch(nothingThere)) ?? ''
    return text.split('\n').filter((line) => line !== '')
  }
  return {
    append,
    read,
    last: async (file, most) => (await read(file)).slice(-most),
    replace: async (file, lines) => {
      await rm(pathOf(file), { force: true })
      await append(file, lines)
    },
    filesIn: async (folder) => {
      const names = (await readdir(path.join(data, folder)).catch(nothingThere)) ?? []
      const own = names.filter((name) => name.endsWith(ENDING)).sort()
      return own.map((name) => `${folder}/${name.slice(0, -ENDING.length)}`)
    },
  }
}

/** Two statements: the one that counts must begin after the lock is held, or it would not see what it waited for. */
const LOCK = 'SELECT 1 AS held FROM pg_advisory_xact_lock(hashtextextended($1, 0))'
const APPEND = `INSERT INTO "FileLine" ("file", "position", "text")
  SELECT $1, n + (SELECT coalesce(max("position"), 0) FROM "FileLine" WHERE "file" = $1), line
  FROM unnest($2::text[]) WITH ORDINALITY AS fresh(line, n)`
const LAST = 'SELECT "text" FROM "FileLine" WHERE "file" = $1 ORDER BY "position" DESC LIMIT $2::int'
type Line = { readonly text: string }

const lock = (sql: Sql, file: string) => sql(LOCK, [`line-file ${file}`])

export function linesOnServer({ read, allOrNone }: Server): LineFiles {
  const put = (file: string, lines: readonly string[], first?: string) =>
    allOrNone(async (sql) => {
      await lock(sql, file)
      if (first) await sql(first, [file])
      if (lines.length > 0) await sql(APPEND, [file, lines])
    })
  const last: LineFiles['last'] = async (file, most) => {
    const lines = await read<Line>(LAST, [file, most])
    return lines.map(({ text }) => text).reverse()
  }
  return {
    append: (file, lines) => put(file, lines),
    read: (file) => last(file, 2 ** 31 - 1),
    last,
    replace: (file, lines) => put(file, lines, 'DELETE FROM "FileLine" WHERE "file" = $1'),
    filesIn: async (folder) => {
      const select = 'SELECT DISTINCT "file" FROM "FileLine" WHERE "file" LIKE $1 ORDER BY "file"'
      const rows = await read<{ readonly file: string }>(select, [`${folder}/%`])
      return rows.map(({ file }) => file)
    },
  }
}

const here = (): LineFiles => (databaseUrl() === null ? linesOnDisk(dataFolder()) : linesOnServer(SERVER))

/** Kept for good when it is told. */
export const appendLines = (file: string, lines: readonly string[]) => here().append(file, lines)
export const readLines = (file: string) => here().read(file)
export const lastLines = (file: string, most: number) => here().last(file, most)
/** Other lines in place of any; in server mode, where a transaction is named, as a part of it. */
export const replaceLines = (file: string, lines: readonly string[], sql?: Sql) =>
  (sql ? linesOnServer(within(sql)) : here()).replace(file, lines)
export const filesIn = (folder: string) => here().filesIn(folder)
/** In server mode, within a transaction: what stands there when nobody adds to it any more, changed. */
export async function changeLines(
  file: string,
  next: (lines: readonly string[]) => readonly string[],
  sql: Sql,
): Promise<void> {
  await lock(sql, file)
  const files = linesOnServer(within(sql))
  await files.replace(file, next(await files.read(file)))
}
