import type { EntryDocument } from '@/lib/log/entry'
import type { Problem } from '@/lib/refusals'
import type { SetOpening } from '../set-feed'
import type { Heard } from './event-lines'

/** The server cannot reach its database, or is starting: nothing the phone should do about it. */
export const SERVER_AWAY = 'The server is being restarted.'

/** The server lets this device in no more. */
export const OPEN_AGAIN = 'Open your crew link again.'

/** What became of one entry that was sent. */
export type Sent =
  | { readonly id: string; readonly became: 'kept' | 'known' }
  | { readonly id: string | null; readonly became: 'refused'; readonly problems: readonly Problem[] }

export type SendAnswer =
  | { readonly heard: 'kept'; readonly received: number; readonly entries: readonly Sent[] }
  /** Nothing of it can be kept. */
  | { readonly heard: 'refused'; readonly problems: readonly Problem[]; readonly sentence: string }
  /** Not these entries' fault: signed out, a full disk, too many at once. They wait. */
  | { readonly heard: 'not-now'; readonly sentence: string; readonly waitMs: number | null }

export interface Listener {
  opened(): void
  event(heard: Heard): void
  /** The server says that it lives, and that nothing is held back before this. */
  beat(): void
  /** The server answered, and lets nobody listen: for this device, or for a while. */
  notNow(sentence: string, waitMs: number | null): void
}

/** How a set screen speaks to the server. Where the server is not reached a promise is broken. */
export interface Wire {
  opening(signal: AbortSignal): Promise<SetOpening>
  /** Whose sign-in this device has for this shoot, if anybody's. */
  whoAmI(signal: AbortSignal): Promise<string | null>
  /** Listens until the stream ends or is cut. */
  listen(since: number, listener: Listener, signal: AbortSignal): Promise<void>
  send(sent: number, entries: readonly EntryDocument[], signal: AbortSignal): Promise<SendAnswer>
}
