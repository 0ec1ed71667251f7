import 'server-only'
import type { Preview } from './erase-person'
import type { Found, ShootRecords } from './person-records'

/** What an erasure would do, in plain words, before it does anything. */
export interface ErasureWords {
  readonly who: string
  readonly parts: readonly { readonly head: string; readonly lines: readonly string[] }[]
}
export function erasureWords(records: ShootRecords, { known, plan }: Found, preview: Preview): ErasureWords {
  const title = String(records.versions.at(-1)?.document.title)
  const who = known.names.length > 0 ? known.names.join(' / ') : known.ids.join(' / ')
  const ids = Object.entries(plan.ids).map(([from, to]) => `${from} becomes ${to}`)
  const kept = known.ids.filter((id) => !(id in plan.ids)).map((id) => `${id} names a job and stays`)
  const parts = [
    {
      head: 'Changes',
      lines: [
        ...grouped(preview.changes.map((one) => ({ ...one, told: changeWords(one) }))),
        ...preview.devices.map(
          ({ name, to, readings }) =>
            `The device ${name} with ${readings === 1 ? '1 reading' : `${readings} readings`} becomes ${to}.`,
        ),
      ],
    },
    { head: 'Ends', lines: endings(preview) },
    {
      head: 'Stays',
      lines: [
        ...grouped(preview.left.map((one) => ({ ...one, told: `“${one.text}”: ${one.why}` }))),
        ...(preview.left.some(({ why }) => why === 'one word of the name') && !plan.notes
          ? ['--notes takes single words of the name out of these texts too, whoever they mean.']
          : []),
        ...photoWords(records, plan.own),
        'What they logged, with its times and order, and their roles and hours: the day is made of them.',
      ],
    },
    {
      head: 'Out of reach from here',
      lines: [
        'Archives, shoot files, PDFs, calendars and backups that were taken out: delete those yourself.',
        'Phones: each takes the change over when it is next in touch; the person’s own are out.',
      ],
    },
  ]
  return {
    who: `${who} in “${title}” (${records.shootId}): ${[...ids, ...kept].join(', ')}.`,
    parts: parts.filter(({ lines }) => lines.length > 0),
  }
}

const quoted = (text: string) => (text.length > 90 ? `“${text.slice(0, 90)}…”` : `“${text}”`)
const changeWords = ({ before, after }: { before: string; after: string | null }) =>
  `${quoted(before)} ${after === null ? 'goes' : `becomes ${quoted(after)}`}`

function endings({ links, keys }: Preview): string[] {
  const link = links === 1 ? '1 link' : `${links} links`
  return [
    ...(links > 0 ? [`${link} with the phones and the calendar that came by it.`] : []),
    ...keys.map((key) => `The device key ${key}.`),
  ]
}

/** What a place is called by people; of the rest its pointer says enough. */
const PLACES: Readonly<Record<string, string>> = {
  '/people/*/id': 'id',
  '/people/*/name': 'name',
  '/people/*/roles/*': 'role',
  '/shots/*/needs/*': 'needed in a shot',
  '/tasks/*/needs/*': 'needed for a task',
  '/sides/*/needs/*': 'needed for a side',
  '/callSheet/contacts/*/name': 'contact',
  '/callSheet/contacts/*/role': 'contact’s role',
  '/callSheet/contacts/*/phone': 'contact’s number',
  '/callSheet/allergens': 'allergens on set',
  '/callSheet/notes': 'notes of the call sheet',
  '/risk/responsible': 'person responsible',
  '/publish/author': 'author',
  '/title': 'title',
  '/shots/*/title': 'title of a shot',
  '/tasks/*/title': 'title of a task',
  '/by/person': 'logged by',
  '/by/device': 'device',
  '/to': 'handed to',
  '/who': 'late',
  '/people/*': 'at a meal',
  '/moves/*/people/*': 'moved by a re-plan',
  '/text': 'note',
  '/note': 'note of a take',
  '/what': 'what changed',
  '/why': 'why',
}
function placeOf(pointer: string): string {
  const path = pointer.replace(/\/\d+(?=\/|$)/g, '/*')
  return PLACES[path] ?? path
}

interface Told {
  readonly where: string
  readonly pointer: string
  readonly told: string
}
/** The same in many versions or lines is told once. */
function grouped(all: readonly Told[]): string[] {
  const groups = new Map<string, { readonly pointer: string; readonly told: string; readonly where: string[] }>()
  for (const { where, pointer, told } of all) {
    const isLog = where.startsWith('log')
    const place = placeOf(pointer)
    const key = `${isLog} ${place} ${told}`
    const group = groups.get(key) ?? { pointer: place, told, where: [] }
    if (group.where.at(-1) !== where) group.where.push(where)
    groups.set(key, group)
  }
  return [...groups.values()].map(({ pointer, told, where }) => `${placeWords(where)}, ${pointer}: ${told}`)
}
function placeWords(where: readonly string[]): string {
  const [first = '', last = ''] = [where[0], where.at(-1)]
  const isLog = first.startsWith('log')
  if (where.length === 1) return first
  return isLog ? `${where.length} log lines` : `${where.length} versions (${first} to ${last})`
}

const MOST_PHOTOS = 20
function photoWords({ lines }: ShootRecords, own: readonly string[]): string[] {
  const theirs = lines.flatMap(({ document: { by, photo } }) => {
    const { person } = (by ?? {}) as { readonly person?: string }
    return typeof photo === 'string' && person !== undefined && own.includes(person) ? [photo] : []
  })
  const some = theirs.slice(0, MOST_PHOTOS).map((name) => `Photograph ${name}, which they took. --photo takes it out.`)
  const more = theirs.length - some.length
  return more > 0 ? [...some, `And ${more} more photographs that they took; the export names them.`] : some
}
