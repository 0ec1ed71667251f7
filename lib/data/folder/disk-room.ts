import 'server-only'
import { stat, statfs } from 'node:fs/promises'
import { BorderError } from '../border-error'

/**
 * The embedded database needs room that nobody asked it for: its write-ahead log grows by files of 16 MB, and a page that is
 * only read may be written again. Below this nothing new is taken in, so that what is here can still be read.
 */
export const ROOM_BYTES = 40_000_000

const mb = (bytes: number) => `${Math.floor(bytes / 1e6)} MB`

/** Refuses where the disk has too little room left for `bytes` more and the database's own needs. */
export async function requireRoom(folder: string, what = 'The change was not saved', bytes = 0): Promise<void> {
  // A disk that cannot say how full it is says so when it is full.
  const disk = await statfs(folder).catch(() => undefined)
  const free = disk ? disk.bavail * disk.bsize : Number.POSITIVE_INFINITY
  if (free >= ROOM_BYTES + bytes) return
  throw new BorderError('disk-refused', {
    sentence: `${what}: the disk is full (${mb(free)} left, ${mb(ROOM_BYTES + bytes)} are needed). Free some room on it; Emberslate then goes on by itself.`,
  })
}

/** Which folder it is, wherever it is moved and whatever it is called by. */
export async function identityOf(folder: string): Promise<string> {
  const { dev, ino } = await stat(folder, { bigint: true })
  return `${dev}:${ino}`
}

/** Next loads this file once per bundle. */
const shared = globalThis as { emberslateFolders?: Map<string, string> }

/** What this path leads to now is the folder that was opened. */
export async function rememberFolder(folder: string): Promise<void> {
  shared.emberslateFolders ??= new Map()
  shared.emberslateFolders.set(folder, await identityOf(folder))
}

/** Refuses where the folder was removed or another put in its place: a journal begun anew there would lack all the rest. */
export async function requireFolder(folder: string): Promise<void> {
  const opened = shared.emberslateFolders?.get(folder)
  if (opened === undefined || (await identityOf(folder).catch(() => '')) === opened) return
  throw new BorderError('disk-refused', {
    sentence:
      'Nothing was saved: the data folder was moved or removed while Emberslate ran. Put it back where it was, or stop Emberslate and start it again on the folder that you want.',
  })
}
