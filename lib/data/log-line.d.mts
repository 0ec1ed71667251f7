/** What the door notes of a request while it is at work. */
export interface RequestNote {
  readonly id: string
  /** The row of the table of who may do what, not the path: addresses name shoots. */
  route?: string
  /** The code by which the door turned it away. */
  refused?: string
}
export function inRequest<T>(request: RequestNote, work: () => T): T
export function requestNow(): RequestNote | undefined
export function scrubbed(words: string): string
export function faultFacts(fault: unknown): Record<string, unknown>
export function lineOf(level: string, event: string, facts?: object, now?: number): string
export function say(level: string, event: string, facts?: object): void
export function sayFault(event: string, fault: unknown, facts?: object): void
