import 'server-only'
import { personsIn } from '../../log/erase-from-log'
import type { ErasurePlan } from '../../plan/erase-person'
import { erasurePlan, type KnownAs, knownAs } from '../../plan/known-as'
import type { ShootDocument } from '../../plan/shoot'
import { listAt } from '../../plan/sketch'
import { database } from '../client'
import { keysOf } from '../door/device-keys'
import { linksOf } from '../door/links'
import type { KeptLine } from '../folder/log-journal'
import { loadLog } from '../load-log'

export interface KeptVersion {
  readonly version: number
  readonly at: Date
  readonly document: ShootDocument
}
/** All of a shoot in which somebody may be named. */
export interface ShootRecords {
  readonly shootId: string
  readonly versions: readonly KeptVersion[]
  /** All lines but bare readings, which have a device and tell of nobody else. */
  readonly lines: readonly KeptLine[]
  /** How many bare readings each device has sent. */
  readonly readings: ReadonlyMap<string, number>
}

/** Every shoot that is here. */
export async function shootIds(): Promise<readonly string[]> {
  const { prisma } = await database()
  return (await prisma.shoot.findMany({ select: { id: true }, orderBy: { id: 'asc' } })).map(({ id }) => id)
}

export async function versionsOf(shootId: string): Promise<readonly KeptVersion[]> {
  const { prisma } = await database()
  const rows = await prisma.shootVersion.findMany({ where: { shootId }, orderBy: { version: 'asc' } })
  return rows.map(({ version, at, document }) => ({ version, at, document: document as ShootDocument }))
}

export async function recordsOf(shootId: string): Promise<ShootRecords> {
  const lines: KeptLine[] = []
  const readings = new Map<string, number>()
  for (let since = 0; ; ) {
    const some = await loadLog(shootId, since, AT_ONCE)
    for (const line of some) {
      const device = bareDeviceOf(line)
      if (device === undefined) lines.push(line)
      else readings.set(device, (readings.get(device) ?? 0) + 1)
    }
    since = some.at(-1)?.position ?? since
    if (some.length < AT_ONCE) break
  }
  return { shootId, versions: await versionsOf(shootId), lines, readings }
}
/** A day may have a million readings: they are never held all at once. */
const AT_ONCE = 5000

function bareDeviceOf({ document }: KeptLine): string | undefined {
  const { device, person } = (document.by ?? {}) as { readonly device?: string; readonly person?: string }
  return document.kind === 'reading' && person === undefined ? device : undefined
}

export interface Found {
  readonly known: KnownAs
  readonly plan: ErasurePlan
}
/** Who stands under these ids, and how they would be taken out; null where the shoot never had such a person. */
export async function findPerson(
  { shootId, versions, lines, readings }: ShootRecords,
  wanted: readonly string[],
  notes: boolean,
): Promise<Found | null> {
  const documents = versions.map(({ document }) => document)
  const links = await linksOf(shootId)
  const persons = new Set([
    ...links.map(({ person }) => person),
    ...lines.flatMap(({ document }) => personsIn(document)),
  ])
  const people = documents.flatMap((document) => listAt<{ readonly id?: unknown }>(document, '/people'))
  if (!wanted.some((id) => persons.has(id) || people.some((one) => one.id === id))) return null
  const known = knownAs(documents, wanted)
  const keys = (await keysOf(shootId)).map(({ name }) => name)
  const devices = [...new Set([...keys, ...readings.keys(), ...lines.flatMap(({ document }) => deviceOf(document))])]
  return { known, plan: erasurePlan(documents, known, { persons: [...persons], devices }, notes) }
}

function deviceOf({ by }: KeptLine['document']): string[] {
  const device = (by as { readonly device?: unknown } | undefined)?.device
  return typeof device === 'string' ? [device] : []
}

export interface Person {
  readonly id: string
  readonly names: readonly string[]
  readonly isGone: boolean
}
/** Everybody whom a shoot has or ever had, those of its newest version first. */
export async function everybodyOf(shootId: string): Promise<readonly Person[]> {
  const documents = (await versionsOf(shootId)).map(({ document }) => document)
  const peopleIn = (document: ShootDocument) => listAt<{ readonly id?: unknown }>(document, '/people')
  const newest = peopleIn(documents.at(-1) ?? {}).map(({ id }) => String(id))
  const all = new Set([
    ...newest,
    ...[...documents].reverse().flatMap((one) => peopleIn(one).map(({ id }) => String(id))),
  ])
  const told = new Set<string>()
  return [...all].flatMap((id) => {
    if (told.has(id)) return []
    const { ids, names } = knownAs(documents, [id])
    for (const one of ids) told.add(one)
    return [{ id, names, isGone: !newest.includes(id) }]
  })
}
