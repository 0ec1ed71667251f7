import { inflateSync } from 'node:zlib'

const HEADER = 44
const ENTRY = 20
const SFNT_HEADER = 12
const SFNT_ENTRY = 16
const padded = (length: number) => (length + 3) & ~3

interface Table {
  readonly tag: number
  readonly checksum: number
  readonly bytes: Buffer
}
function tablesOf(woff: Buffer): Table[] {
  return Array.from({ length: woff.readUInt16BE(12) }, (_, i) => {
    const at = HEADER + i * ENTRY
    const [offset, packed, length] = [woff.readUInt32BE(at + 4), woff.readUInt32BE(at + 8), woff.readUInt32BE(at + 12)]
    const stored = woff.subarray(offset, offset + packed)
    // A table that does not get smaller is stored as it is.
    const bytes = packed < length ? inflateSync(stored) : stored
    return { tag: woff.readUInt32BE(at), checksum: woff.readUInt32BE(at + 16), bytes }
  })
}

/**
 * A WOFF 1 font as the plain TrueType it packs. The printer would unpack each table anew, in script, at every use:
 * that took four fifths of the time of a sheet.
 *
 * Source: W3C, WOFF File Format 1.0, sections 3 to 5 (header of 44 bytes, entries of 20; sfnt header 12, entries 16).
 */
export function toTrueType(woff: Buffer): Buffer {
  if (woff.toString('latin1', 0, 4) !== 'wOFF') throw new RangeError('not a WOFF 1 font')
  const tables = tablesOf(woff)
  const power = Math.floor(Math.log2(tables.length))
  const size = tables.reduce((sum, t) => sum + padded(t.bytes.length), SFNT_HEADER + SFNT_ENTRY * tables.length)
  const out = Buffer.alloc(size)
  out.writeUInt32BE(woff.readUInt32BE(4), 0)
  out.writeUInt16BE(tables.length, 4)
  out.writeUInt16BE(2 ** power * SFNT_ENTRY, 6)
  out.writeUInt16BE(power, 8)
  out.writeUInt16BE((tables.length - 2 ** power) * SFNT_ENTRY, 10)
  let offset = SFNT_HEADER + SFNT_ENTRY * tables.length
  tables.forEach(({ tag, checksum, bytes }, i) => {
    const at = SFNT_HEADER + i * SFNT_ENTRY
    out.writeUInt32BE(tag, at)
    out.writeUInt32BE(checksum, at + 4)
    out.writeUInt32BE(offset, at + 8)
    out.writeUInt32BE(bytes.length, at + 12)
    bytes.copy(out, offset)
    offset += padded(bytes.length)
  })
  return out
}
