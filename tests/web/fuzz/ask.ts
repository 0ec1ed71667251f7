import { gzipSync } from 'node:zlib'
import { ROUTES } from '../../../lib/data/door/access'
import { badHeaders, badPath, badQuery } from './bad-parts'
import { brokenAt } from './bad-values'
import { type Draw, drawOf } from './draw'
import { type Schema, valueFrom } from './from-schema'
import type { Raw } from './send'
import { type As, type Operation, photoOf, shootWith, VISITORS, type World } from './world'

/** One request of the run: what is asked, as whom, and what is wrong with it. */
export interface Asked {
  readonly number: number
  readonly as: As
  readonly method: string
  /** As the description or the table has it; "elsewhere" for an address that nobody has. */
  readonly route: string
  readonly target: string
  readonly wrong: readonly string[]
  /** Where the fault may lie in how the bytes are framed, a server may close without a word. */
  readonly mayClose: boolean
  readonly raw: Raw
}

const PAGES = ROUTES.filter(({ path }) => !path.startsWith('/api/') && !/\.\w+$/.test(path))
const METHODS = [
  'GET',
  'POST',
  'PUT',
  'DELETE',
  'PATCH',
  'HEAD',
  'OPTIONS',
  'TRACE',
  'PROPFIND',
  'QUERY',
  'get',
  'G E T',
]
/** Those that work a forecast out or print it cost the most time; each is asked for now and then. */
const COSTLY = /\/(forecast|preview|gains|cut-face|what-if|samples)$|\.pdf$|overlay|calls\.ics|set-day/

/** Whoever may do much is drawn more often: what they send goes deeper. */
const DRAWN: readonly As[] = [
  ...VISITORS,
  ...VISITORS.filter((as) => as === 'theirs' || as === 'crew' || as === 'viewer' || as === 'device'),
  ...Array.from({ length: 6 }, () => 'owner' as const),
  ...Array.from({ length: 3 }, () => 'producer' as const),
]

/** Bodies of a shoot's own kind start from a small one that reads. */
function rightBody(schema: Schema, world: World, draw: Draw): unknown {
  const value = valueFrom(schema, world.schemas, draw) as Record<string, unknown>
  if (value && typeof value === 'object' && 'document' in value && draw.chance(0.7)) value.document = shootWith('Sand')
  if (value && typeof value === 'object' && 'person' in value) value.person = draw.one(['spare', 'nobody-here'])
  if (value && typeof value === 'object' && 'upload' in value)
    value.upload = draw.one(['fuzz-upload-1', 'fuzz-upload-2'])
  return value
}

interface Part {
  body: Buffer | null
  readonly headers: [string, string][]
  readonly wrong: string[]
}
const UTF8_BROKEN = [
  ['overlong', [0xc0, 0xaf]],
  ['lone continuation', [0x80]],
  ['surrogate', [0xed, 0xa0, 0x80]],
  ['cut short', [0xf0, 0x9f]],
] as const

/** The same JSON as bytes that are not what they should be. */
function misencoded(text: string, { headers, wrong }: Part, draw: Draw): Buffer {
  const utf8 = Buffer.from(text)
  const how = draw.one([
    'utf16le',
    'utf16be',
    'bom',
    'gzip',
    'gzip unsaid',
    'bad utf-8',
    'half',
    'junk after',
    'empty',
    'blank',
    'number',
    'huge',
    'bomb',
    'lines',
  ])
  wrong.push(how)
  if (how === 'utf16le') return Buffer.from(`\ufeff${text}`, 'utf16le')
  if (how === 'utf16be') return Buffer.from(`\ufeff${text}`, 'utf16le').swap16()
  if (how === 'bom') return Buffer.from(`\ufeff${text}`)
  if (how === 'gzip' || how === 'bomb') {
    headers.push(['content-encoding', 'gzip'])
    return gzipSync(how === 'gzip' ? utf8 : Buffer.alloc(5_000_000, 32))
  }
  if (how === 'gzip unsaid') return gzipSync(utf8)
  if (how === 'bad utf-8') {
    const [, bytes] = draw.one(UTF8_BROKEN)
    const at = draw.below(utf8.length + 1)
    return Buffer.concat([utf8.subarray(0, at), Buffer.from(bytes), utf8.subarray(at)])
  }
  if (how === 'half') return utf8.subarray(0, draw.below(utf8.length))
  if (how === 'junk after') return Buffer.concat([utf8, Buffer.from('\n{"again":1}')])
  if (how === 'lines') return Buffer.from(text.replaceAll(',', '\r,\u2028').replaceAll(':', ':\u00a0'))
  if (how === 'empty') return Buffer.alloc(0)
  if (how === 'blank') return Buffer.alloc(900_000, ' ')
  return how === 'number'
    ? Buffer.from(draw.one(['1', '"x"', 'null', '[]', '[{}]', 'true']))
    : Buffer.alloc(draw.one([1_000_001, 1_600_000, 3_000_000]), '"')
}

function bytesBody(world: World, part: Part, draw: Draw): Buffer {
  const right = draw.chance(0.5) ? photoOf('Sand') : world.archive
  const how = draw.below(5)
  if (how === 0) return right
  part.wrong.push(['right', 'bytes turned', 'cut', 'huge', 'empty'][how] ?? '')
  if (how === 1) {
    const turned = Buffer.from(right)
    for (let i = 0; i < 6; i++) turned[draw.below(turned.length)] = draw.below(256)
    return turned
  }
  if (how === 2) return right.subarray(0, draw.below(right.length))
  return how === 3 ? Buffer.concat([right, Buffer.alloc(draw.one([1_500_001, 2_500_000]))]) : Buffer.alloc(0)
}

function bodyPart({ body }: Operation, world: World, draw: Draw, broken: boolean): Part {
  const part: Part = { body: null, headers: [], wrong: [] }
  if (!body) return part
  part.headers.push(['content-type', body.type])
  if (body.schema.format === 'binary') return { ...part, body: bytesBody(world, part, draw) }
  const right = rightBody(body.schema, world, draw)
  const how = broken ? draw.below(10) : 9
  if (how < 6) {
    const { text, what } = brokenAt(right, draw)
    part.wrong.push(what)
    return { ...part, body: Buffer.from(text) }
  }
  const text = JSON.stringify(right)
  if (how < 8) return { ...part, body: misencoded(text, part, draw) }
  if (how === 8) {
    const type = draw.one([
      'text/plain',
      'multipart/form-data',
      'application/json; charset=utf-16',
      'a'.repeat(3000),
      '/',
      'application/x-www-form-urlencoded',
    ])
    part.headers.splice(0, 1, ['content-type', type])
    part.wrong.push(type.slice(0, 30))
  }
  return { ...part, body: Buffer.from(text) }
}

/** What a parameter of the path may be; whole shoots are written to in the sand alone. */
function pathValue(name: string, writes: boolean, as: As, world: World, draw: Draw, schema: Schema): string {
  const { ours, theirs, sand } = world.shoots
  if (name === 'name') return world.photo
  if (name === 'upload') return draw.one(['fuzz-upload-1', 'fuzz-upload-2'])
  if (name !== 'id' && name !== 'shootId' && name !== 'cardId') return String(valueFrom(schema, world.schemas, draw))
  if (writes && (as === 'owner' || as === 'producer' || as === 'crew')) return draw.one([sand, sand, sand, 'no-such'])
  // The other crew's own board may be written to; it holds what only they may see.
  if (writes && as === 'theirs') return draw.one([ours, sand, 'no-such'])
  return draw.one([ours, ours, theirs, theirs, sand, 'no-such'])
}

interface Target {
  readonly operation: Operation
  readonly path: string
  readonly query: readonly (readonly [string, string])[]
}
function targetOf(as: As, world: World, draw: Draw): Target {
  const operation = operationFor(world, draw)
  const writes = operation.method !== 'GET'
  const path = operation.path.replace(/[{[](\w+)[}\]]/g, (_, name) => {
    const schema = operation.parameters.find((one) => one.name === name && one.in === 'path')?.schema ?? {
      type: 'string',
    }
    return encodeURIComponent(pathValue(name, writes, as, world, draw, schema))
  })
  const query = operation.parameters
    .filter((one) => one.in === 'query' && one.name !== 'key' && draw.chance(0.5))
    .map(({ name, schema }) => [name, String(valueFrom(schema, world.schemas, draw))] as const)
  return {
    operation,
    path,
    query: as === 'calendar' && path.endsWith('/calls.ics') ? [...query, ['key', world.calendar]] : query,
  }
}
function operationFor(world: World, draw: Draw): Operation {
  const page = draw.chance(0.06) ? draw.one(PAGES) : undefined
  if (page) return { method: page.method, path: page.path, parameters: [], body: null }
  const drawn = draw.one(draw.chance(0.35) ? world.operations.filter(({ body }) => body) : world.operations)
  return COSTLY.test(drawn.path) && draw.chance(0.6) ? draw.one(world.operations) : drawn
}

/** What is taken away from a request's being right: none of it in one of twelve. */
function wrongs(draw: Draw) {
  const some = !draw.chance(1 / 12)
  return {
    method: some && draw.chance(0.06),
    path: some && draw.chance(0.15),
    query: some && draw.chance(0.15),
    headers: some && draw.chance(0.25),
    body: some && draw.chance(0.85),
    frame: some && draw.chance(0.08),
  }
}

export function askedFor(seed: number, number: number, world: World): Asked {
  const draw = drawOf(seed, number)
  const as = draw.one(DRAWN)
  const may = wrongs(draw)
  const { operation, path, query } = targetOf(as, world, draw)
  const wrong: string[] = []
  const method = may.method ? draw.one(METHODS) : operation.method
  const at = may.path ? badPath(path, draw, wrong) : path
  const asked = may.query
    ? badQuery(query, draw, wrong)
    : query.map(([key, value]) => `${key}=${encodeURIComponent(value)}`)
  const target = asked.length > 0 ? `${at}?${asked.join('&')}` : at
  const part = bodyPart(operation, world, draw, may.body)
  const headers: [string, string][] = [
    ['host', `127.0.0.1:${world.port}`],
    ...(operation.path.endsWith('/sign-out') ? [] : Object.entries(draw.one(world.headers[as]))),
    ...part.headers,
  ]
  if (may.headers) badHeaders(headers, draw, wrong)
  const framed = framedBy(part.body, may.frame ? draw : null, wrong)
  const lines = headers.map(([name, value]) => `${name}: ${value}`)
  return {
    number,
    as,
    method,
    route: may.path ? 'elsewhere' : `${operation.method} ${operation.path}`,
    target,
    wrong: [...wrong, ...part.wrong],
    mayClose: framed.mayClose || method === 'CONNECT' || method === 'G E T',
    raw: {
      head: `${method} ${target} HTTP/1.1\r\n${[...lines, ...framed.lines, 'connection: close'].join('\r\n')}\r\n\r\n`,
      pieces: framed.pieces,
      end: framed.end,
      streams: path.endsWith('/events') || path.endsWith('/overlay.zip'),
    },
  }
}

interface Framed extends Pick<Raw, 'pieces' | 'end'> {
  readonly lines: readonly string[]
  readonly mayClose: boolean
}
function framedBy(body: Buffer | null, draw: Draw | null, wrong: string[]): Framed {
  const whole: Framed = {
    lines: body ? [`content-length: ${body.length}`] : [],
    pieces: body ? [body] : [],
    end: 'whole',
    mayClose: false,
  }
  if (!draw || !body) return whole
  const how = draw.one(['chunked', 'slow', 'leaves', 'both lengths', 'less than said', 'bad chunk', 'expect'])
  wrong.push(how)
  const half = body.length >> 1
  if (how === 'chunked')
    return {
      ...whole,
      lines: ['transfer-encoding: chunked'],
      pieces: chunks([body.subarray(0, half), body.subarray(half)]),
    }
  if (how === 'slow')
    return { ...whole, pieces: [body.subarray(0, 1), body.subarray(1, half + 1), body.subarray(half + 1)] }
  if (how === 'leaves') return { ...whole, pieces: [body.subarray(0, half)], end: 'leaves', mayClose: true }
  if (how === 'both lengths') return { ...whole, lines: [...whole.lines, 'transfer-encoding: chunked'], mayClose: true }
  if (how === 'less than said')
    return { ...whole, lines: [`content-length: ${body.length + 7}`], end: 'leaves', mayClose: true }
  if (how === 'bad chunk')
    return { ...whole, lines: ['transfer-encoding: chunked'], pieces: [Buffer.from('zz\r\nx\r\n')], mayClose: true }
  return { ...whole, lines: [...whole.lines, `expect: ${draw.one(['100-continue', 'the-unexpected'])}`] }
}
const chunks = (parts: readonly Buffer[]) => [
  ...parts
    .filter(({ length }) => length > 0)
    .map((part) => Buffer.concat([Buffer.from(`${part.length.toString(16)}\r\n`), part, Buffer.from('\r\n')])),
  Buffer.from('0\r\n\r\n'),
]
