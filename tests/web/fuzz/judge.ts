import { inflateSync } from 'node:zlib'
import { BORDER } from '../../../lib/data/border-error'
import type { Asked } from './ask'
import type { Answer } from './send'
import { hiddenFrom, type World } from './world'

const ALWAYS = [
  'x-content-type-options',
  'content-security-policy',
  'referrer-policy',
  'cross-origin-resource-policy',
] as const
/** What only a program tells of itself: frames of a stack, errors of the system and of packages. */
const INSIDES =
  /\n\s+at .+:\d+:\d+|\bE(NOENT|ACCES|NAMETOOLONG|EXIST|ISDIR|INVAL)\b|\b(Prisma|PGlite|prisma\.)|\bsyscall\b|\bTypeError\b/
/** Refusals of what was sent: each says where. */
const AT_A_PLACE = new Set([400, 413, 415, 422])

/** Everything that is wrong with an answer, in plain words; nothing where it is as it should be. */
export function faultsOf(asked: Asked, answer: Answer, world: World): string[] {
  if (answer.outcome === 'late') return [`no answer in ${Math.round(answer.tookMs)} ms`]
  if (answer.outcome === 'closed') return asked.mayClose ? [] : ['the line was closed without an answer']
  return [
    ...(answer.status >= 500 && !isNotReady(asked, answer) ? [`status ${answer.status}`] : []),
    ...ALWAYS.filter((name) => !answer.headers.has(name)).map((name) => `no ${name} (status ${answer.status})`),
    ...(leadsAway(answer, world) ? [`leads to ${answer.headers.get('location')}`] : []),
    ...problemFaults(asked, answer),
    ...leaks(asked, answer, world),
  ]
}

/** That the server cannot work now is what this route is there to say, by this status. */
const isNotReady = (asked: Asked, { status }: Answer) => status === 503 && asked.route.endsWith('/readyz')

/** Nobody who asks here is sent to another site. */
function leadsAway({ status, headers }: Answer, { address }: World): boolean {
  const to = headers.get('location')
  const named = (url: URL) => ['127.0.0.1', 'localhost', new URL(address).hostname].includes(url.hostname)
  return to !== undefined && status >= 300 && status < 400 && !named(new URL(to, address))
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

function problemFaults({ target, method }: Asked, { status, headers, body }: Answer): string[] {
  const ofApi = /^\/api(\/|$|\?)/.test(target)
  if (!ofApi || status < 400) return []
  const type = headers.get('content-type') ?? ''
  if (!type.startsWith('application/problem+json'))
    return [`${status} as ${type || 'nothing'} instead of a problem document`]
  if (method === 'HEAD') return []
  const read = readJson(body)
  if (!isObject(read)) return [`${status}: the problem document is no JSON object`]
  const { title, detail, code, problems } = read
  const faults: string[] = []
  if (read.status !== status) faults.push(`the document says status ${read.status}, the answer ${status}`)
  if (typeof title !== 'string' || !title || typeof detail !== 'string' || !detail)
    faults.push(`${status} without its sentence`)
  if (status < 500 && !(String(code) in BORDER)) faults.push(`${status} with the unknown code "${code}"`)
  if (!Array.isArray(problems)) return [...faults, `${status} without a list of problems`]
  if (AT_A_PLACE.has(status) && problems.length === 0) faults.push(`${status} ${code} without a place`)
  const wrong = problems.some(
    (one) =>
      !isObject(one) ||
      typeof one.sentence !== 'string' ||
      !one.sentence ||
      !/^(\/.*)?$/s.test(String(one.pointer ?? 'none')),
  )
  return wrong ? [...faults, `${status} ${code}: a problem without pointer or sentence`] : faults
}
function readJson(bytes: Buffer): unknown {
  try {
    return JSON.parse(bytes.toString('utf8'))
  } catch {
    return undefined
  }
}

function leaks({ as, target, raw }: Asked, { headers, body }: Answer, { secretPaths }: World): string[] {
  const head = [...headers].map(([name, value]) => `${name}: ${value}`).join('\n')
  const text = `${head}\n${body.toString('utf8')}`
  // What a sender wrote may come back to them.
  const sent = `${target} ${raw.head} ${raw.pieces.map(String).join('')}`
  const inside = INSIDES.exec(text)?.[0]
  return [
    ...(inside && !sent.includes(inside.trim()) ? [`tells of its insides: ${inside.trim().slice(0, 60)}`] : []),
    ...secretPaths.filter((path) => text.includes(path) && !sent.includes(path)).map((path) => `names ${path}`),
    ...hiddenFrom(as)
      .filter((word) => holds(body, word) || head.includes(word))
      .map((word) => `tells ${as} "${word}" of another shoot`),
  ]
}

/** Whether the word stands in the bytes, however a page, a sheet or an archive may write it. */
export function holds(bytes: Buffer, word: string): boolean {
  const wide = Buffer.from(word, 'utf16le').swap16()
  return [...opened(bytes)].some(
    (part) =>
      part.includes(word) ||
      part.includes(wide) ||
      part.toString('latin1').toLowerCase().includes(wide.toString('hex')),
  )
}
function* opened(bytes: Buffer): Generator<Buffer> {
  yield bytes
  if (!bytes.subarray(0, 5).equals(Buffer.from('%PDF-'))) return
  for (let at = bytes.indexOf('stream'); at >= 0; at = bytes.indexOf('stream', at + 6)) {
    const from = bytes[at + 6] === 13 ? at + 8 : at + 7
    try {
      yield inflateSync(bytes.subarray(from), { finishFlush: 2 })
    } catch {
      // Not a compressed one.
    }
  }
}
