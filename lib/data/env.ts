import 'server-only'
import path from 'node:path'

/** Where the database and the journals are kept. The one place under lib that reads the environment. */
export function dataFolder(): string {
  const named = process.env.EMBERSLATE_DATA?.trim()
  return path.resolve(/* turbopackIgnore: true */ named ? named : '.data')
}
