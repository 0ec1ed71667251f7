import 'server-only'
import { type Erasure, eraseTexts } from '../plan/erase-person'

/** What was told of a forecast is made of the program's words and of titles: all of it is free text. */
const BOOK = { fields: {}, limits: new Map<string, number>() }

/** A line of the forecasts told, without the person; one that does not read stays as it is, and is passed over everywhere. */
export function eraseTold(line: string, erasure: Erasure): string {
  try {
    return JSON.stringify(eraseTexts(JSON.parse(line), BOOK, erasure).document)
  } catch {
    return line
  }
}
