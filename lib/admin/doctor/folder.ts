import { existsSync, statSync } from 'node:fs'
import { statfs } from 'node:fs/promises'
import path from 'node:path'
import { readJournals } from '../../data/folder/journal'
import { faultNotes } from '../../data/folder/journal-notes'
import { readLogJournals } from '../../data/folder/log-journal'
import { takesWrite } from '../../data/readiness'
import { broken, bytesInWords, type Finding, howMany, look, ok } from './finding'

/** A shoot with photographs takes some 100 MB; the app itself refuses below 40 MB (lib/data/folder/disk-room.ts). */
const ROOM = { broken: 100e6, look: 1e9 }
export function roomFinding(free: number): Finding {
  const left = `${bytesInWords(free)} are free on the disk of the data folder.`
  if (free < ROOM.broken) return broken('Room', left, 'Free some now: soon nothing more can be saved.')
  return free < ROOM.look ? look('Room', left, 'Free some before the day: photographs take it.') : ok('Room', left)
}
export async function freeRoom(folder: string): Promise<number> {
  const { bavail, bsize } = await statfs(folder)
  return bavail * bsize
}

const OTHERS = 0o077
export async function rightsFindings(folder: string): Promise<readonly Finding[]> {
  const writes = await takesWrite(folder).catch((fault: NodeJS.ErrnoException) => fault)
  const first =
    writes === true
      ? ok('Data folder', `${folder} takes a write.`)
      : broken(
          'Data folder',
          `${folder} takes no write (${(writes as NodeJS.ErrnoException).code}).`,
          'Give it back to the user that runs Emberslate, and see that its disk is not full or for reading only.',
        )
  const door = path.join(folder, 'door')
  if (process.platform === 'win32' || !existsSync(door) || (statSync(door).mode & OTHERS) === 0) return [first]
  return [
    first,
    look('Keys', 'Other users of this computer can look into the folder door.', `chmod -R go-rwx "${door}"`),
  ]
}

/** What the journals hold: the last word on what was confirmed. */
export interface Journaled {
  readonly versions: ReadonlyMap<string, number>
  readonly lines: ReadonlyMap<string, number>
  readonly lastReceived: number | null
  readonly findings: readonly Finding[]
}

export async function journalFindings(folder: string): Promise<Journaled> {
  const [journals, logs] = await Promise.all([readJournals(folder), readLogJournals(folder)])
  const numbers = new Map(journals.map((one) => [one.shootId, new Set(one.lines.map(({ version }) => version)).size]))
  const positions = new Map(logs.map((one) => [one.shootId, new Set(one.lines.map(({ position }) => position)).size]))
  const sum = (map: ReadonlyMap<string, number>) => [...map.values()].reduce((all, n) => all + n, 0)
  const received = logs.flatMap(({ lines }) => lines.map((line) => line.received))
  const held = `${howMany(sum(numbers), 'version')}, ${howMany(sum(positions), 'line')} of log`
  const read = `${howMany(journals.length, 'shoot')} read whole: ${held}`
  const faults = [...journals, ...logs].flatMap((file) => {
    const damaged = file.faults.some(({ is }) => is !== 'cut-off')
    const todo = damaged ? 'npm run backup first; then see what is said.' : 'Nothing needs doing.'
    return faultNotes(file).map((note) => (damaged ? broken : look)('Journals', note, todo))
  })
  return {
    versions: numbers,
    lines: positions,
    lastReceived: received.length === 0 ? null : received.reduce((a, b) => Math.max(a, b)),
    findings: [ok('Journals', faults.length > 0 ? `${read}, but for what is named next.` : `${read}.`), ...faults],
  }
}
