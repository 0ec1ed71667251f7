import { z } from 'zod'
import type { Seconds } from '../units'
import { date } from './date-field'
import type { Bounds } from './fields'
import { quantity, record, text, yesNo } from './fields'
import { quoted } from './nearest'

const LONGEST_ADDRESS = 400

function isAddress(written: string): boolean {
  if (written.length > LONGEST_ADDRESS || /[\s<>"\p{C}]/u.test(written)) return false
  const read = URL.canParse(written) ? new URL(written) : null
  // A password in it would be printed and scanned by everybody.
  return read !== null && /^https?:$/.test(read.protocol) && read.username === '' && read.password === ''
}
/** An address of the web, whole, as it is printed and scanned. */
const address = (what: string, example: string) => {
  const error = (issue: { input?: unknown }) =>
    `${issue.input === undefined ? `${what} is missing here.` : `${quoted(issue.input)} is not an address of the web.`} Write it whole, such as "${example}", at most ${LONGEST_ADDRESS} letters.`
  return z.string({ error }).check(z.refine(isAddress, { error })).meta({ format: 'uri' })
}

const DAY_S = 86400
const VIDEO_LENGTH: Bounds = {
  min: 1,
  max: DAY_S,
  examples: ['12 min 30 s', '1 h 5 min'],
  sentence: (written) => `${written} is no length for the video. Write one from 1 s to 24 h, such as "12 min 30 s".`,
}

/** Where card and video are to be found; what the card's page, files and code say of it. All may be left out. */
export const PUBLISH = record('what is published', {
  author: text("the author's name", 80, 1).optional(),
  /** Anybody may read the card's page on this server, without a link. */
  open: yesNo.optional(),
  page: address('The address of the page', 'https://example.com/leg-of-lamb').optional(),
  image: address('The address of the picture', 'https://example.com/leg-of-lamb.jpg').optional(),
  video: record('a video', {
    url: address('The address of the video', 'https://example.com/leg-of-lamb-film').optional(),
    title: text('the title of the video', 120, 1).optional(),
    uploaded: date('day it was put up', '2027-06-01').optional(),
    length: quantity<Seconds>('duration', VIDEO_LENGTH).optional(),
  }).optional(),
  /** Between commas: "lamb, charcoal, spring". */
  keywords: text('the keywords', 200, 1).optional(),
  cuisine: text('the cuisine', 60, 1).optional(),
  category: text('the kind of dish', 60, 1).optional(),
})
export type Publish = z.output<typeof PUBLISH>
