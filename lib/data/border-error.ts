import type { Problem } from '../refusals'
import { EARLY } from './door/early-refusals.mjs'

/** What the border refuses, each with its HTTP status and the sentence a person reads. */
export const BORDER = {
  ...EARLY,
  'broken-json': [400, 'This is not whole JSON. Send the document again from its first brace to its last.'],
  'bad-address': [
    400,
    'This address cannot be read. Write it without NUL, and with "%" only before two digits of a letter in UTF-8.',
  ],
  'write-id-missing': [400, 'A write needs a "writeId" of 8 to 64 letters, digits, "-" or "_", made by the sender.'],
  'not-found': [
    404,
    'There is no such shoot here. It may be on another computer: export it there and open the file here.',
  ],
  stale: [
    409,
    'This shoot was changed elsewhere in the meantime. Load it again, then make your change; nothing was overwritten.',
  ],
  'signed-out': [401, 'You are not signed in here. Open your crew link again, or sign in at /door.'],
  'wrong-passphrase': [403, 'This is not the passphrase. Type it as it was chosen, with its spaces and capitals.'],
  'wrong-code': [403, 'This code opens nothing, or no longer. Ask the producer for a new one.'],
  'may-not': [403, 'Your link does not reach so far. Ask the producer to do this, or for another link.'],
  'not-at-this-computer': [
    403,
    'The passphrase is chosen at the computer that Emberslate runs on. Open it there at http://127.0.0.1 with its port.',
  ],
  'door-invalid': [422, 'This cannot be kept. Each fault is listed with its place.'],
  'too-often': [429, 'That was tried too often. Wait as long as Retry-After says, then try once more.'],
  'nothing-to-undo': [409, 'There is no change to take back: this is the shoot as it was first saved.'],
  'cooker-as-it-was': [
    409,
    'Nothing is remembered of this cooker, or nothing can be taken back. Load the page again to see how it stands.',
  ],
  'too-large': [413, 'This is larger than 1 MB, and a shoot file is a few kB. Is it the right file?'],
  'photo-unknown': [
    415,
    'This is no photograph that can be kept. Send a JPEG or a WebP picture, the file itself as the body.',
  ],
  'photo-place': [
    415,
    'This photograph says where it was taken. Take the place (GPS) out of its data, or draw it anew as the board does, then send it.',
  ],
  'photos-full': [
    413,
    'There is no more room for photographs of this shoot. Save the note without one; those that are here stay.',
  ],
  'photo-not-found': [
    404,
    'This photograph is not here yet. It may still be on the phone that took it: open the board there, on the set’s network.',
  ],
  'archive-invalid': [422, 'This archive cannot be taken in. Each fault is listed with its place.'],
  'already-here': [409, 'This shoot is here already. Take the archive in as a copy, or leave it.'],
  'foreign-host': [
    421,
    'Emberslate does not know this name. Open it at http://127.0.0.1 with its port, or at an address that it printed when it started.',
  ],
  'foreign-origin': [403, 'Another web site tried to write here. Make the change in Emberslate itself.'],
  invalid: [422, 'The shoot file has faults. Each is listed with its place.'],
  'log-invalid': [422, 'Nothing of this can be kept in the slate log. Each fault is listed with its place.'],
  'database-away': [503, 'The database does not answer at present; nothing was changed. Try again in a moment.'],
  'disk-refused': [507, 'The disk did not take the change, so it was not saved. Free some room, then try again.'],
} as const satisfies Record<string, readonly [number, string]>

export type BorderCode = keyof typeof BORDER

/** What travels with the code: the place of the fault, the version that stands now, what exactly was wrong. */
export type BorderDetail = {
  pointer?: string
  sentence?: string
  version?: number
  problems?: readonly Problem[]
  /** Seconds after which it may be tried again. */
  retryAfterS?: number
  /** The methods that the address takes. */
  allow?: string
}

export class BorderError extends Error {
  readonly code: BorderCode
  readonly status: number
  readonly detail: BorderDetail

  constructor(code: BorderCode, detail: BorderDetail = {}) {
    super(detail.sentence ?? BORDER[code][1])
    this.name = 'BorderError'
    this.code = code
    this.status = BORDER[code][0]
    this.detail = detail
  }
}
