import { access } from 'node:fs/promises'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { databaseUrl, dataFolder } from '../data/env'
import { backUp } from './backup/back-up'
import { refuse, say } from './plain-words'

const HELP = `Everything that Emberslate keeps, in one file, also while it runs.

  npm run backup -- FILE.zip

What was saved before it began is in it, whole. So is who may come in: passphrase and codes hashed, the calendars' secret and
the certificate's key as they are; keep the file as you keep keys. npm run restore -- FILE.zip puts it into an empty folder.
The data is that of EMBERSLATE_DATA (or .data).`

/** Exits 0 where there is a backup, 1 where there is none. */
export async function backupCommand(args: readonly string[]): Promise<number> {
  const [file] = args
  if (file === '--help') return say(HELP)
  if (args.length !== 1 || !file?.endsWith('.zip')) return refuse('Write: npm run backup -- FILE.zip')
  if (databaseUrl() !== null)
    return refuse(
      `DATABASE_URL is set: PostgreSQL keeps everything, and backs it up while Emberslate runs. Write: pg_dump --format=custom --file=${file.replace(/\.zip$/, '.dump')} "$DATABASE_URL"`,
    )
  const data = dataFolder()
  const place = path.resolve(file)
  if (place.startsWith(data + path.sep))
    return refuse(`${file} lies in the data folder. Put the backup on another disk.`)
  if (await isThere(place)) return refuse(`${file} is there already. Choose another name; nothing was overwritten.`)
  if (!(await isThere(data))) return refuse(`There is no data folder ${data}. Set EMBERSLATE_DATA to the one you mean.`)
  const { shoots, photos, bytes } = await backUp(data, place)
  return say(
    `${file} has ${shoots} shoot(s) and ${photos} photograph(s), ${(bytes / 1e6).toFixed(1)} MB; only you can read it.`,
  )
}
const isThere = (file: string) =>
  access(file).then(
    () => true,
    () => false,
  )

if (process.argv[1] === fileURLToPath(import.meta.url))
  process.exitCode = await backupCommand(process.argv.slice(2)).catch((fault: Error) =>
    refuse(`There is no backup: ${fault.message.split('\n')[0]}`),
  )
