import 'server-only'
import { eraseFromEntry } from '../../log/erase-from-log'
import {
  type Change,
  type Erasure,
  type ErasurePlan,
  eraseFromShoot,
  erasureOf,
  type Left,
} from '../../plan/erase-person'
import { database } from '../client'
import { keysOf, revokeKey } from '../door/device-keys'
import { linksOf, revokeLink } from '../door/links'
import { newRowId } from '../door/secret'
import { endByLink } from '../door/sessions'
import { removePhotos } from '../photos'
import { eraseInFolder } from './erase-in-folder'
import { eraseOnServer } from './erase-on-server'
import { rememberErased } from './erased'
import { beginErasing, type Erasing, endErasing } from './erasing'
import { ERASURE } from './erasure-version'
import type { Found, ShootRecords } from './person-records'

interface Placed {
  /** "version 3" or "log line 12". */
  readonly where: string
}
/** All that an erasure would do, told before it does anything. */
export interface Preview {
  readonly changes: readonly (Change & Placed)[]
  readonly left: readonly (Left & Placed)[]
  readonly links: number
  readonly keys: readonly string[]
  /** Devices whose name goes, with the one in its place and how many readings they sent. */
  readonly devices: readonly { readonly name: string; readonly to: string; readonly readings: number }[]
}

export async function previewErasure(
  { shootId, versions, lines, readings }: ShootRecords,
  plan: ErasurePlan,
): Promise<Preview> {
  const erasure = erasureOf(plan)
  const placed = [
    ...versions.map(({ version, document }) => ({
      where: `version ${version}`,
      ...eraseFromShoot(document, erasure),
    })),
    ...lines.map(({ position, document }) => ({ where: `log line ${position}`, ...eraseFromEntry(document, erasure) })),
  ]
  return {
    changes: placed.flatMap(({ where, changes }) => changes.map((one) => ({ where, ...one }))),
    left: placed.flatMap(({ where, left }) => left.map((one) => ({ where, ...one }))),
    links: (await theirLinks(shootId, erasure)).length,
    keys: (await theirKeys(shootId, plan)).map(({ name }) => name),
    devices: Object.entries(plan.devices).map(([name, to]) => ({ name, to, readings: readings.get(name) ?? 0 })),
  }
}

const theirLinks = async (shoot: string, { own }: Erasure) =>
  (await linksOf(shoot)).filter(({ person }) => own.has(person))
const theirKeys = async (shoot: string, { devices }: ErasurePlan) =>
  (await keysOf(shoot)).filter(({ name }) => name in devices)

/** Takes a person out of a shoot, everywhere and for good. `photos` are those that go too. */
export async function erasePerson(shoot: string, { plan }: Found, photos: readonly string[]): Promise<void> {
  const id = newRowId()
  const erasing: Erasing = {
    shoot,
    at: Date.now(),
    writeId: `${ERASURE}${id}`,
    plan: copied(plan),
    photos: [...photos],
  }
  await beginErasing(erasing)
  await finishErasing(erasing)
}
const copied = (plan: ErasurePlan): Erasing['plan'] => JSON.parse(JSON.stringify(plan))

/** From the beginning or from where it was cut off: each step done again changes nothing more. `reached` is told each. */
export async function finishErasing(erasing: Erasing, reached: (step: string) => void = () => {}): Promise<void> {
  const { shoot, at, writeId, plan, photos } = erasing
  // Nobody of them comes in or sends while it goes on.
  for (const link of await theirLinks(shoot, erasureOf(plan))) {
    await revokeLink(shoot, link.id)
    await endByLink(link.id)
  }
  reached('links')
  for (const key of await theirKeys(shoot, plan)) await revokeKey(shoot, key.id)
  reached('keys')
  await rememberErased(shoot, at, plan)
  reached('guard')
  if (photos.length > 0) await removePhotos(shoot, photos)
  reached('photographs')
  const { folder } = await database()
  if (folder === null) {
    await eraseOnServer(erasing)
    // A line that was on its way when the guard was put up may have waited for that turn, and stands behind it.
    await eraseOnServer(erasing)
  } else await eraseInFolder(folder, erasing, reached)
  reached('records')
  await endErasing(writeId)
}
