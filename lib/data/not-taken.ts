import 'server-only'
import { isAway } from './away'
import { BorderError } from './border-error'
import { wayOnFrom, whyRefused } from './folder/disk-words'

/** Turns what keeping failed with into a refusal in words, with the way on; a server that is away stays known as such. */
export const notTaken =
  (sentenceOf: (why: string) => string) =>
  (fault: unknown): never => {
    if (fault instanceof BorderError || isAway(fault)) throw fault
    throw new BorderError('disk-refused', { sentence: `${sentenceOf(whyRefused(fault))} ${wayOnFrom(fault)}` })
  }
