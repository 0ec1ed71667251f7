import 'server-only'
import type { Prisma } from './generated/client'

/** What one process tells all of them, its own included. Ids only: what happened is read from the database. */
export type Notice =
  | { readonly on: 'log'; readonly shoot: string; readonly position: number }
  | { readonly on: 'version'; readonly shoot: string; readonly version: number }
  | { readonly on: 'forecast'; readonly shoot: string }
  | { readonly on: 'session-ended'; readonly id: string }
  | { readonly on: 'work-asked' }
  | { readonly on: 'work-done'; readonly id: string }
/** `again`: notices may have been missed; look at everything again. */
export type Heard = Notice | { readonly on: 'again' }
/** Must not throw and must not wait. */
export type Ear<On extends Heard['on']> = (heard: Extract<Heard, { on: On }>) => void
/** Told true when this process is the one, and false when it no longer is. */
export type Led = (leads: boolean) => void

export interface Bus {
  /** With `tx` it is heard when that is committed, and never where it is not. */
  notify(notice: Notice, tx?: Prisma.TransactionClient): Promise<void>
  /** Hears from now on; returns how to stop. */
  hear<On extends Heard['on']>(on: On, ear: Ear<On>): () => void
  /** Asks to be the one process that does what is named, until stopped; told at each change. */
  lead(name: string, led: Led): () => void
}

/** Those of one process who hear. */
export class Ears {
  readonly #ears = new Map<string, Set<(heard: never) => void>>()

  hear<On extends Heard['on']>(on: On, ear: Ear<On>): () => void {
    const own = this.#ears.get(on) ?? new Set()
    this.#ears.set(on, own.add(ear))
    return () => own.delete(ear)
  }
  tell(heard: Heard): void {
    for (const ear of this.#ears.get(heard.on) ?? []) ear(heard as never)
  }
}

/** One process alone: whoever notifies has told everybody, and whoever asks is the one. */
class EmbeddedBus extends Ears implements Bus {
  async notify(notice: Notice): Promise<void> {
    this.tell(notice)
  }
  lead(_name: string, led: Led): () => void {
    led(true)
    return () => {}
  }
}

/** One for the process, whichever of Next's bundles it is loaded in. */
const shared = globalThis as { emberslateBus?: Bus }
export function bus(): Bus {
  shared.emberslateBus ??= new EmbeddedBus()
  return shared.emberslateBus
}
export const notify: Bus['notify'] = (notice, tx) => bus().notify(notice, tx)
export const hear: Bus['hear'] = (on, ear) => bus().hear(on, ear)
