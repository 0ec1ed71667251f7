import { connect } from 'node:net'
import { gunzipSync } from 'node:zlib'

/** A request as bytes, so that what no client would send can be sent. */
export interface Raw {
  readonly head: string
  /** Written one after another; with more than one, a pause lies between. */
  readonly pieces: readonly Buffer[]
  /** `leaves`: the client goes away before it is through. */
  readonly end: 'whole' | 'leaves'
  /** A stream that goes on for ever is left once it has begun. */
  readonly streams: boolean
}
export interface Answer {
  readonly outcome: 'answered' | 'closed' | 'late'
  readonly status: number
  readonly headers: ReadonlyMap<string, string>
  readonly body: Buffer
  readonly tookMs: number
}

const PAUSE_MS = 40
const LISTENS_MS = 150
const HEAD_END = Buffer.from('\r\n\r\n')

export async function send(port: number, raw: Raw, boundMs: number): Promise<Answer> {
  const started = performance.now()
  const { bytes, late } = await exchange(port, raw, boundMs)
  const tookMs = performance.now() - started
  const end = bytes.indexOf(HEAD_END)
  if (end < 0 || late) return { outcome: late ? 'late' : 'closed', status: 0, headers: new Map(), body: bytes, tookMs }
  return { outcome: 'answered', ...read(bytes, end), tookMs }
}

function exchange(port: number, raw: Raw, boundMs: number): Promise<{ bytes: Buffer; late: boolean }> {
  return new Promise((resolve) => {
    const parts: Buffer[] = []
    const socket = connect({ port, host: '127.0.0.1' })
    const over = (late: boolean) => {
      clearTimeout(timer)
      socket.destroy()
      resolve({ bytes: Buffer.concat(parts), late })
    }
    const timer = setTimeout(() => over(true), boundMs)
    socket.on('data', (part) => {
      if (raw.streams && parts.length === 0) setTimeout(() => over(false), LISTENS_MS)
      parts.push(part)
    })
    // A server that refused early no longer reads; what it said stands.
    socket.on('error', () => over(false))
    socket.on('close', () => over(false))
    socket.on('connect', () => void write())
    const write = async () => {
      socket.write(Buffer.from(raw.head, 'latin1'))
      for (const [i, piece] of raw.pieces.entries()) {
        if (i > 0) await new Promise((done) => setTimeout(done, PAUSE_MS))
        if (socket.writable) socket.write(piece)
      }
      if (raw.end === 'leaves') setTimeout(() => over(false), PAUSE_MS)
    }
  })
}

/** Of the last answer's head; an interim "100 Continue" comes before it. */
function read(bytes: Buffer, end: number): Pick<Answer, 'status' | 'headers' | 'body'> {
  const lines = bytes.subarray(0, end).toString('latin1').split('\r\n')
  const status = Number(lines[0]?.split(' ')[1] ?? 0)
  const rest = bytes.subarray(end + 4)
  const next = rest.indexOf(HEAD_END)
  if (status === 100 && next >= 0) return read(rest, next)
  const headers = new Map(
    lines.slice(1).map((line) => [line.split(':')[0]?.toLowerCase() ?? '', line.replace(/^[^:]*:\s*/, '')]),
  )
  const framed = headers.get('transfer-encoding') === 'chunked' ? dechunked(rest) : rest
  return { status, headers, body: headers.get('content-encoding') === 'gzip' ? unzipped(framed) : framed }
}

function dechunked(bytes: Buffer): Buffer {
  const parts: Buffer[] = []
  for (let at = 0; ; ) {
    const end = bytes.indexOf('\r\n', at)
    const size = end < 0 ? 0 : Number.parseInt(bytes.subarray(at, end).toString('latin1'), 16)
    if (!size) return Buffer.concat(parts)
    parts.push(bytes.subarray(end + 2, end + 2 + size))
    at = end + 2 + size + 2
  }
}
function unzipped(bytes: Buffer): Buffer {
  try {
    return gunzipSync(bytes, { finishFlush: 2 })
  } catch {
    return bytes
  }
}
