import type { Instant } from '../units'

/**
 * ULID: 48 bits of time and 80 of chance as 26 letters of Crockford's base 32; sorts by time as text.
 * Source: the ULID specification (github.com/ulid/spec), from memory.
 */
export type EntryId = string
export const RANDOM_BYTES = 10
const LETTERS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ'
const TIME_LETTERS = 10
const LATEST_MS = 2 ** 48 - 1
/** The first letter holds 3 bits only. */
export const ENTRY_ID = /^[0-7][0-9A-HJKMNP-TV-Z]{25}$/

/** `random`: 10 bytes of the caller's chance (`crypto.getRandomValues`, which needs no secure context). */
export function entryId(at: Instant, random: Uint8Array): EntryId {
  if (random.length !== RANDOM_BYTES) throw new RangeError(`An id takes ${RANDOM_BYTES} bytes, not ${random.length}.`)
  if (!(at >= 0 && at <= LATEST_MS)) throw new RangeError(`An id takes a time from 0 to ${LATEST_MS} ms, not ${at}.`)
  return timeLetters(Math.floor(at)) + chanceLetters(random)
}

function timeLetters(ms: number): string {
  let [left, letters] = [ms, '']
  for (let i = 0; i < TIME_LETTERS; i++) {
    letters = LETTERS.charAt(left % 32) + letters
    left = Math.floor(left / 32)
  }
  return letters
}

/** 5 bytes are 8 letters. */
function chanceLetters(random: Uint8Array): string {
  let [bits, held, letters] = [0, 0, '']
  for (const byte of random) {
    bits = (bits << 8) | byte
    held += 8
    for (; held >= 5; held -= 5) letters += LETTERS.charAt((bits >> (held - 5)) & 31)
    bits &= (1 << held) - 1
  }
  return letters
}
