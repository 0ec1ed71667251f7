import 'server-only'
import { isAway } from './away'
import { BorderError } from './border-error'

/** Turns what keeping failed with into a refusal in words; a server that is away stays known as such. */
export const notTaken =
  (sentenceOf: (why: string) => string) =>
  (fault: unknown): never => {
    if (fault instanceof BorderError || isAway(fault)) throw fault
    const why = fault instanceof Error ? fault.message : String(fault)
    throw new BorderError('disk-refused', { sentence: sentenceOf(why) })
  }
