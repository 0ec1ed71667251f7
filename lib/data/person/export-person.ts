import 'server-only'
import { eraseFromEntry } from '../../log/erase-from-log'
import { type Erasure, eraseFromShoot, erasureOf } from '../../plan/erase-person'
import type { Instant } from '../../units'
import { keysOf } from '../door/device-keys'
import { linksOf } from '../door/links'
import { seenByLink } from '../door/sessions'
import type { KeptLine } from '../folder/log-journal'
import type { Found, ShootRecords } from './person-records'

/** What one JSON says of one person in one shoot. README.md says what each part is; times are UTC. */
export interface PersonExport {
  readonly shoot: { readonly id: string; readonly title: string; readonly date: string }
  readonly person: {
    readonly ids: readonly string[]
    readonly names: readonly string[]
    readonly phones: readonly string[]
    readonly roles: readonly string[]
  }
  /** Every text of the shoot that tells of them, with its place and the versions in which it stands there. */
  readonly inShoot: readonly {
    readonly at: string
    readonly text: string
    readonly versions: readonly [number, number]
  }[]
  /** Lines of the log that they logged or that name them, whole, as they were written. */
  readonly inLog: readonly { readonly position: number; readonly received: string; readonly entry: unknown }[]
  /** Phones and probes named after them, and how many readings each sent; the readings are in the shoot's archive. */
  readonly devices: readonly { readonly name: string; readonly readings: number }[]
  /** Names of photographs with their notes: read them at /api/shoots/ID/photos/NAME or in the shoot's archive. */
  readonly photographs: readonly string[]
  readonly links: readonly {
    readonly role: string
    readonly made: string
    readonly ends: string
    readonly phones: number
    readonly seen: string | null
  }[]
  readonly keys: readonly {
    readonly name: string
    readonly made: string
    readonly ends: string
    readonly used: string | null
  }[]
}

const utc = (at: number | Instant) => new Date(at).toISOString()

/** Everything that is kept of one person in one shoot. */
export async function exportPerson(
  { shootId, versions, lines, readings }: ShootRecords,
  { known, plan }: Found,
): Promise<PersonExport> {
  // Single words of the name count too: it is theirs to see whether they are meant.
  const erasure = { ...erasureOf(plan), notes: true, ids: { get: theirs(plan.own) } }
  const newest = versions.at(-1)?.document ?? {}
  const own = lines.filter((line) => isOwn(line, erasure))
  const seen = await seenByLink()
  return {
    shoot: { id: shootId, title: String(newest.title), date: String(newest.date) },
    person: known,
    inShoot: textsOf(versions, erasure),
    inLog: own.map(({ position, received, document }) => ({ position, received: utc(received), entry: document })),
    devices: Object.keys(plan.devices).map((name) => ({ name, readings: readings.get(name) ?? 0 })),
    photographs: [...new Set(own.flatMap(({ document: { photo } }) => (typeof photo === 'string' ? [photo] : [])))],
    links: (await linksOf(shootId))
      .filter(({ person }) => plan.own.includes(person))
      .map(({ id, role, made, expires }) => {
        const use = seen.get(id)
        return { role, made: utc(made), ends: utc(expires), phones: use?.phones ?? 0, seen: use ? utc(use.seen) : null }
      }),
    keys: (await keysOf(shootId))
      .filter(({ name }) => name in plan.devices)
      .map(({ name, made, expires, seen: used }) => ({
        name,
        made: utc(made),
        ends: utc(expires),
        used: used === null ? null : utc(used),
      })),
  }
}

/** Whatever names them would change, those of their ids that stay among it. */
const theirs = (own: readonly string[]) => (id: string) => (own.includes(id) ? `${id}\u0000` : undefined)

const isOwn = ({ document }: KeptLine, erasure: Erasure) => {
  const { changes, left } = eraseFromEntry(document, erasure)
  return changes.length + left.length > 0
}

function textsOf(versions: ShootRecords['versions'], erasure: Erasure): PersonExport['inShoot'] {
  const found = new Map<string, { at: string; text: string; versions: [number, number] }[]>()
  for (const { version, document } of versions) {
    const { changes, left } = eraseFromShoot(document, erasure)
    const named = [
      ...changes.map(({ pointer, before }) => [pointer, before]),
      ...left
        .filter(({ pointer }) => !changes.some((one) => one.pointer === pointer))
        .map(({ pointer, text }) => [pointer, text]),
    ]
    for (const [at = '', text = ''] of named) {
      const all = found.get(`${at} ${text}`) ?? []
      const last = all.at(-1)
      if (last?.versions[1] === version - 1) last.versions[1] = version
      else if (last?.versions[1] !== version) all.push({ at, text, versions: [version, version] })
      found.set(`${at} ${text}`, all)
    }
  }
  return [...found.values()].flat()
}
