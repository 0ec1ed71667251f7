import type { Layout } from '@/lib/day/layout'
import type { EntryDocument } from '@/lib/log/entry'
import type { ShootDocument } from '@/lib/plan/shoot'
import type { Effect, LiveForecast, Session } from '@/lib/session/session'
import type { SessionDay } from '@/lib/session/session-day'
import type { Instant, Seconds } from '@/lib/units'

/** What a person or device adds; the feed puts id, time and name to it. */
export type EntryDraft = Omit<EntryDocument, 'id' | 'at' | 'by'> & { readonly kind: string }

/** Live: the server hears us. Catching up: connected, the outbox or the log is not through yet. Cut off: alone. */
export type Link = 'live' | 'catching-up' | 'cut-off'

/** All that a screen of the set shows follows from this. */
export interface SetSnapshot {
  readonly session: Session
  readonly link: Link
  /** Entries of this device that the server has not confirmed. */
  readonly waiting: number
  /** Whose forecast moves the calls now: a device's own only while it is cut off. */
  readonly forecastBy: 'server' | 'this device' | null
  /** What a merge brought, in sentences, newest first: "2 phones marked 'off heat', 40 s apart; the earlier counts." */
  readonly merged: readonly string[]
  /** The alert sounded last to this person, until it is answered. */
  readonly sounding: (Effect & { readonly do: 'sound-alert' }) | null
  /** Entries of this device that the server refused, each with its sentence; kept here, and not part of the day. */
  readonly aside?: readonly { readonly document: EntryDocument; readonly sentence: string }[]
  /** Why nothing goes out although the server is there, in its words. */
  readonly held?: string | null
  /** A day that is played: what is added stays on this screen. */
  readonly rehearsal?: true
}

/**
 * Where a set screen gets its day from and puts its entries: the server, a rehearsal, or a test. An entry that `add`
 * took is safe on the device before it returns.
 */
export interface SetFeed {
  /** The server's time as well as it is known here; in a rehearsal the played time. */
  now(): Instant
  /** The person at this screen, or null where nobody has said. */
  readonly person: string | null
  snapshot(): SetSnapshot
  subscribe(changed: () => void): () => void
  /** `ago`: it happened so long before now. */
  add(draft: EntryDraft, ago?: Seconds): Promise<void>
  /** Somebody says who they are; the device remembers it. Does nothing where the sign-in says it already. */
  choose(person: string): void
}

export type SoundAlert = Effect & { readonly do: 'sound-alert' }
/** An alert, and when it came up. */
export interface Raised {
  readonly effect: SoundAlert
  readonly at: number
}
/** Who is called and who owns what, as the server sees it; `raised`: what nobody has seen to yet. */
export interface ServerState extends Pick<Session, 'now' | 'calls' | 'alerts' | 'load'> {
  readonly raised: readonly Raised[]
}

/** All that a screen of the set needs to open; what `GET /api/shoots/ID/set-day` answers. */
export interface SetOpening {
  readonly version: number
  readonly day: SessionDay
  readonly forecast: { readonly id: string; readonly at: Instant; readonly forecast: LiveForecast } | null
  readonly people: readonly { readonly id: string; readonly name?: string; readonly roles: readonly string[] }[]
  readonly now: Instant
  /** The version by which somebody was last taken out of the shoot and its log. */
  readonly erased?: number
  readonly state?: ServerState | null
  /** With it a device that is cut off works out its own forecast. */
  readonly plan?: {
    readonly document: ShootDocument
    readonly layout: Pick<Layout, 'meatOn' | 'lidOpenings' | 'start'>
  }
}
