import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import type { Place } from './kill-server'

const deleted = (folder: string) => rmSync(path.join(folder, 'pg'), { recursive: true, force: true })

/** A data folder; its database is lost by `lose`. */
export function folderPlace(folder: string, lose: (folder: string) => void = deleted): Place {
  return {
    env: { EMBERSLATE_DATA: folder },
    lose: () => lose(folder),
    another: async () => folderPlace(mkdtempSync(path.join(folder, 'other-')), lose),
  }
}
export const ownFolder = () => mkdtempSync(path.join(tmpdir(), 'emberslate-kills-'))

/** A database of a PostgreSQL server, which alone answers for what it was given. */
export function serverPlace(url: string, create: () => Promise<string>): Place {
  return { env: { DATABASE_URL: url }, lose: null, another: async () => serverPlace(await create(), create) }
}
