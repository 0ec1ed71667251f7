import { crc32 } from 'node:zlib'

/** The last key of a line; lines of before it have none. */
const SUM = /,"sum":"([0-9a-f]{8})"\}$/
const sumOf = (text: string) => crc32(text).toString(16).padStart(8, '0')

/** One JSON object as a line that shows later whether a bit of it was flipped. */
export function summedLine(value: object): string {
  const text = JSON.stringify(value)
  return `${text.slice(0, -1)},"sum":"${sumOf(text)}"}`
}

/** What stood in the line; undefined where it is not whole, or not as it was written. */
export function readSummed(line: string): unknown {
  const sum = SUM.exec(line)
  const text = sum ? `${line.slice(0, sum.index)}}` : line
  if (sum && sumOf(text) !== sum[1]) return undefined
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}
