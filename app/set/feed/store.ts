import type { EntryDocument } from '@/lib/log/entry'
import type { Receipt } from '@/lib/log/log'
import type { Session } from '@/lib/session/session'
import type { Raised, SetOpening } from '../set-feed'

/** A line as the device keeps it. Without a receipt it waits to be sent; with a sentence the server refused it. */
export interface KeptLine {
  readonly document: EntryDocument
  readonly receipt?: Receipt
  readonly refused?: string
}
/** Where the day stood when it was last kept. */
export interface KeptDay {
  readonly opening: SetOpening
  /** Up to which position of the server's log the lines are here. */
  readonly position: number
  readonly state: Pick<Session, 'now' | 'calls' | 'alerts' | 'load' | 'history' | 'forecast'> | null
  readonly raised: readonly Raised[]
}
export interface Kept {
  readonly device: string
  readonly person: string | null
  readonly day: KeptDay | null
  readonly lines: readonly KeptLine[]
  readonly fired: ReadonlySet<string>
}

/** What a device keeps of one shoot through reloads and flat batteries. */
export interface FeedStore {
  /** Whether what is kept outlives the page. */
  readonly lasting: boolean
  /** `device` is this device's name where it has none yet. */
  open(device: string): Promise<Kept>
  keepPerson(person: string | null): Promise<void>
  keepDay(day: KeptDay): Promise<void>
  /** All of them or none. */
  keepLines(lines: readonly KeptLine[]): Promise<void>
  /** True once a key: of several pages on one device the first. */
  fire(key: string, at: number): Promise<boolean>
  /** What the server has goes from this device; what waits to be sent, or was refused, is nowhere else and stays. */
  forget(): Promise<void>
  close(): void
}

export const idOf = ({ document }: KeptLine) => document.id as string
