import { fileURLToPath } from 'node:url'
import { databaseUrl, dataFolder } from '../data/env'
import { restoreInto } from './backup/restore-into'
import { refuse, say } from './plain-words'

const HELP = `Puts a backup back, all of it or nothing.

  npm run restore -- FILE.zip

EMBERSLATE_DATA (or .data) is the folder; it must not be there yet, or be empty. npm start then goes on from it.`

/** Exits 0 where the backup is back, 1 where it is not. */
export async function restoreCommand(args: readonly string[]): Promise<number> {
  const [file] = args
  if (file === '--help') return say(HELP)
  if (args.length !== 1 || !file) return refuse('Write: npm run restore -- FILE.zip')
  if (databaseUrl() !== null)
    return refuse(
      `DATABASE_URL is set: PostgreSQL puts its own backup back. Write: pg_restore --clean --if-exists --dbname="$DATABASE_URL" FILE.dump. For a backup of a folder, unset DATABASE_URL, restore, then npm run move.`,
    )
  const { made, shoots, lines, notes } = await restoreInto(dataFolder(), file)
  return say(
    [`${dataFolder()} is as it was at ${made}: ${shoots} shoot(s), ${lines} log line(s).`, ...notes].join('\n'),
  )
}

if (process.argv[1] === fileURLToPath(import.meta.url))
  process.exitCode = await restoreCommand(process.argv.slice(2)).catch((fault: Error) =>
    refuse(`Nothing was restored: ${fault.message.split('\n')[0]}`),
  )
