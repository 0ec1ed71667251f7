/**
 * The embedded database as the suites of the data load it: where a folder is new, what initdb would make is copied
 * there, made once before (empty-database.ts). It takes 5 s of a core each time and is the same each time.
 */
import { cpSync, existsSync } from 'node:fs'
import path from 'node:path'
import { PGlite as Engine } from '../node_modules/@electric-sql/pglite/dist/index.js'

export class PGlite extends Engine {
  static override create: typeof Engine.create = async (...args: unknown[]) => {
    const [folder] = args
    const empty = process.env.EMBERSLATE_EMPTY
    if (typeof folder === 'string' && empty && !existsSync(folder))
      cpSync(path.join(empty, 'initial'), folder, { recursive: true })
    return (Engine.create as (...same: unknown[]) => Promise<never>)(...args)
  }
}
