import { formatTemp, fromFahrenheit } from '../units'

const both = (f: number) => `${formatTemp(fromFahrenheit(f))} / ${f} °F`

/** What the authority advises at home [fsis-safe-minimum] [fsis-leftovers]; how thick to chill it is the model's and stands apart. */
const ADVICE: readonly string[] = [
  `Out of the fridge no longer than 2 hours after slicing, 1 hour in air above ${both(90)}.`,
  `Cool it in shallow containers, then at ${both(40)} or colder: eat it within 3 to 4 days, or freeze it for up to 4 months.`,
  `Warm it up to ${both(165)}.`,
]
/** The authority's advice, then the author's own word as theirs. */
export function storageSentences(own: string): string[] {
  const note = own.trim()
  return [...ADVICE, ...(note ? [`The author’s own note: ${/[.!?]$/.test(note) ? note : `${note}.`}`] : [])]
}
