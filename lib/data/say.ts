import * as lines from './log-line.mjs'

/** What is somebody's, or of a shoot, is never written down; the compiler holds the names of facts to it. */
type Personal = 'name' | 'title' | 'person' | 'phone' | 'email' | 'address' | 'path' | 'url' | 'body' | 'document'
type Secret = 'cookie' | 'secret' | 'passphrase' | 'key' | 'headers'
/** Figures, ids, and words of the program's own. */
export type Facts = Readonly<Record<string, string | number | boolean | null | undefined>> & {
  readonly [Name in Personal | Secret]?: never
}
export type Level = 'info' | 'warn' | 'error'

/** Writes one JSON line; within a request it carries the request's number. `event` is one or two words with a hyphen. */
export const say = (level: Level, event: string, facts?: Facts): void => lines.say(level, event, facts)
/** A fault: its kind, code and place; its words only without what they quote, for they may quote anybody. */
export const sayFault = (event: string, fault: unknown, facts?: Facts): void => lines.sayFault(event, fault, facts)

/** The number that a person can tell, and that the log has. */
export const requestId = (): string | null => lines.requestNow()?.id ?? null
export const noteRoute = (route: string) => note({ route })
export const noteRefusal = (refused: string) => note({ refused })
function note(facts: { route?: string; refused?: string }) {
  const request = lines.requestNow()
  if (request) Object.assign(request, facts)
}
