import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { closeDatabase } from '../data/client'
import { erasePerson, finishErasing, previewErasure } from '../data/person/erase-person'
import { unfinishedErasures } from '../data/person/erasing'
import { type ErasureWords, erasureWords } from '../data/person/erasure-words'
import { exportPerson } from '../data/person/export-person'
import {
  type Found,
  findPerson,
  recordsOf,
  type ShootRecords,
  shootIds,
  versionsOf,
} from '../data/person/person-records'
import { photosOf } from '../data/photos'
import { idsNamed } from '../plan/known-as'

const HELP = `What is kept of one person, and taking them out for good.

  npm run -s person -- export --shoot ID --person ID
  npm run -s person -- export --name "First Last"        in every shoot; or --phone "+353 87 555 0199"
      prints one JSON document with everything that names them or that they logged.

  npm run -s person -- erase --shoot ID --person ID      or --name, --phone
      prints what would change and what would stay, and changes nothing.
      --notes       single words of their name go out of notes and other free text too
      --photo NAME  this photograph goes too; may be given several times
      --yes         does it. It cannot be undone.

The data is that of EMBERSLATE_DATA (or .data), and Emberslate must be stopped; with DATABASE_URL it may run.`

interface Wanted {
  readonly shoot?: string
  readonly person?: string
  readonly name?: string
  readonly phone?: string
  readonly notes?: boolean
  readonly yes?: boolean
  readonly photo?: readonly string[]
}
interface Subject {
  readonly records: ShootRecords
  readonly found: Found
}
const say = (...lines: readonly string[]) => process.stdout.write(lines.map((line) => `${line}\n`).join(''))

/** Exits 0 where it did what was asked, 1 where it did not. */
export async function personCommand(args: readonly string[]): Promise<number> {
  const asked = readOptions(args)
  if (typeof asked === 'string') {
    const isHelp = asked === HELP
    process[isHelp ? 'stdout' : 'stderr'].write(`${asked}\n`)
    return isHelp ? 0 : 1
  }
  try {
    return await answer(asked.verb, asked.wanted)
  } catch (fault) {
    process.stderr.write(`${fault instanceof Error ? fault.message.split('\n')[0] : String(fault)}\n`)
    return 1
  } finally {
    await closeDatabase().catch(() => undefined)
  }
}

function readOptions(args: readonly string[]): { verb: 'export' | 'erase'; wanted: Wanted } | string {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        shoot: { type: 'string' },
        person: { type: 'string' },
        name: { type: 'string' },
        phone: { type: 'string' },
        notes: { type: 'boolean' },
        photo: { type: 'string', multiple: true },
        yes: { type: 'boolean' },
        help: { type: 'boolean', short: 'h' },
      },
    })
    const [verb, ...more] = positionals
    if (values.help || positionals.length === 0) return HELP
    if ((verb !== 'export' && verb !== 'erase') || more.length > 0) return 'Write export or erase; --help says how.'
    const byId = values.shoot !== undefined && values.person !== undefined
    if (byId === (values.name !== undefined || values.phone !== undefined) || (values.person && !values.shoot))
      return 'Say who it is: --shoot ID --person ID, or --name or --phone for every shoot.'
    return { verb, wanted: values }
  } catch (fault) {
    return `${(fault as Error).message.split('\n')[0]} --help says what there is.`
  }
}

async function answer(verb: 'export' | 'erase', wanted: Wanted): Promise<number> {
  const cutOff = await unfinishedErasures()
  for (const left of cutOff) {
    await finishErasing(left)
    process.stderr.write(`An erasure in shoot ${left.shoot} had been cut off; it is finished now.\n`)
  }
  const subjects = await subjectsOf(wanted)
  // Who ran it again for the one that was cut off has what they asked for.
  if (typeof subjects === 'string' && verb === 'erase' && cutOff.length > 0) return 0
  if (typeof subjects === 'string') {
    process.stderr.write(`${subjects}\n`)
    return 1
  }
  if (verb === 'export') {
    const shoots = []
    for (const { records, found } of subjects) shoots.push(await exportPerson(records, found))
    say(JSON.stringify({ emberslatePerson: 1, shoots }, null, 2))
    return 0
  }
  return eraseAll(subjects, wanted)
}

async function eraseAll(subjects: readonly Subject[], { photo = [], yes = false }: Wanted): Promise<number> {
  const photos = new Map<string, readonly string[]>()
  for (const { records } of subjects) photos.set(records.shootId, await photosOf(records.shootId))
  const unknown = photo.find((name) => ![...photos.values()].some((names) => names.includes(name)))
  if (unknown !== undefined) {
    process.stderr.write(`There is no photograph ${unknown} here. Nothing was changed.\n`)
    return 1
  }
  for (const { records, found } of subjects) {
    say(...linesOf(erasureWords(records, found, await previewErasure(records, found.plan))), '')
    if (!yes) continue
    await erasePerson(
      records.shootId,
      found,
      photo.filter((name) => photos.get(records.shootId)?.includes(name)),
    )
    say(`Done in shoot ${records.shootId}. Its newest version says that something was erased and when, not what.`, '')
  }
  if (!yes) say('Nothing was changed. The same with --yes does it; it cannot be undone.')
  return 0
}

const linesOf = ({ who, parts }: ErasureWords) => [
  who,
  ...parts.flatMap(({ head, lines }) => ['', `${head}:`, ...lines.map((line) => `   ${line}`)]),
]

async function subjectsOf(wanted: Wanted): Promise<readonly Subject[] | string> {
  const { shoot, person, name, phone, notes = false } = wanted
  const pairs: (readonly [string, readonly string[]])[] = []
  if (shoot !== undefined && person !== undefined) pairs.push([shoot, [person]])
  else
    for (const id of shoot === undefined ? await shootIds() : [shoot]) {
      const documents = (await versionsOf(id)).map(({ document }) => document)
      const ids = idsNamed(documents, { ...(name ? { name } : {}), ...(phone ? { phone } : {}) })
      if (ids.length > 0) pairs.push([id, ids])
    }
  const subjects: Subject[] = []
  for (const [id, ids] of pairs) {
    const records = await recordsOf(id)
    if (records.versions.length === 0) return `There is no shoot ${id} here.`
    const found = await findPerson(records, ids, notes)
    if (!found) return `Shoot ${id} never had a person ${ids.join()}. It has ${namesIn(records)}.`
    subjects.push({ records, found })
  }
  return subjects.length > 0 ? subjects : 'Nobody here is or was called that, exactly.'
}
function namesIn({ versions }: ShootRecords): string {
  const people = (versions.at(-1)?.document.people ?? []) as readonly { readonly id?: string; readonly name?: string }[]
  const named = people.map(({ id, name }) => (name ? `${id} (${name})` : String(id)))
  return named.length > 0 ? named.join(', ') : 'nobody'
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exitCode = await personCommand(process.argv.slice(2))
