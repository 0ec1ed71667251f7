import type { Preview } from '../data/erase-person'
import type { Found, ShootRecords } from '../data/person-records'

/** What an erasure would do, in plain lines, before it does anything. */
export function erasureWords(records: ShootRecords, found: Found, preview: Preview): readonly string[] {
  const { shootId, versions } = records
  const { known, plan } = found
  const title = String(versions.at(-1)?.document.title)
  const who = known.names.length > 0 ? known.names.join(' / ') : known.ids.join(' / ')
  const ids = Object.entries(plan.ids).map(([from, to]) => `${from} becomes ${to}`)
  const kept = known.ids.filter((id) => !(id in plan.ids)).map((id) => `${id} names a job and stays`)
  return [
    `${who} in “${title}” (${shootId}): ${[...ids, ...kept].join(', ')}.`,
    ...part('Changes:', grouped(preview.changes.map((one) => ({ ...one, told: changeWords(one) })))),
    ...part('Ends:', endings(preview)),
    ...part('Stays:', [
      ...grouped(preview.left.map((one) => ({ ...one, told: `“${one.text}”: ${one.why}` }))),
      ...(preview.left.some(({ why }) => why === 'one word of the name') && !plan.notes
        ? ['   --notes takes single words of the name out of these texts too, whoever they mean.']
        : []),
      ...photoWords(records, plan.own),
      '   What they logged, with its times and order, and their roles and hours: the day is made of them.',
    ]),
    ...part('Out of reach from here:', [
      '   Archives, shoot files, PDFs, calendars and backups that were taken out: delete those yourself.',
      '   Phones: each takes the change over when it is next in touch; the person’s own are out.',
    ]),
  ]
}

const part = (head: string, lines: readonly string[]) => (lines.length === 0 ? [] : ['', head, ...lines])
const quoted = (text: string) => (text.length > 90 ? `“${text.slice(0, 90)}…”` : `“${text}”`)
const changeWords = ({ before, after }: { before: string; after: string | null }) =>
  `${quoted(before)} ${after === null ? 'goes' : `becomes ${quoted(after)}`}`

function endings({ links, keys }: Preview): string[] {
  const link = links === 1 ? '1 link' : `${links} links`
  return [
    ...(links > 0 ? [`   ${link} with the phones and the calendar that came by it.`] : []),
    ...keys.map((key) => `   The device key ${key}.`),
  ]
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
    const place = isLog ? pointer : pointer.replace(/\/\d+(?=\/|$)/g, '/*')
    const key = `${isLog} ${place} ${told}`
    const group = groups.get(key) ?? { pointer: place, told, where: [] }
    if (group.where.at(-1) !== where) group.where.push(where)
    groups.set(key, group)
  }
  return [...groups.values()].map(({ pointer, told, where }) => `   ${placeWords(where)}, ${pointer}: ${told}`)
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
  if (theirs.length === 0) return []
  return [
    `   Photographs that they took (${theirs.length}), without their name; --photo NAME takes one out:`,
    ...theirs.slice(0, MOST_PHOTOS).map((name) => `      ${name}`),
  ]
}
