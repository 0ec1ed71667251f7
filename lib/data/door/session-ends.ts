import 'server-only'
import { type Bus, bus } from '../server/bus'

interface Stream {
  readonly ender: AbortController
  readonly still: () => Promise<boolean>
}
/** Open event streams by the session or key they were opened with; one for all of Next's bundles. */
const shared = globalThis as { emberslateStreams?: WeakMap<Bus, Map<string, Set<Stream>>> }
function streams(): Map<string, Set<Stream>> {
  shared.emberslateStreams ??= new WeakMap()
  const known = shared.emberslateStreams.get(bus())
  if (known) return known
  const made = new Map<string, Set<Stream>>()
  shared.emberslateStreams.set(bus(), made)
  bus().hear('session-ended', ({ id }) => {
    for (const { ender } of made.get(id) ?? []) ender.abort()
    made.delete(id)
  })
  bus().hear('again', () => {
    for (const { ender, still } of [...made.values()].flatMap((own) => [...own]))
      still().then(
        (good) => !good && ender.abort(),
        // Away again: it is asked at the next return.
        () => undefined,
      )
  })
  return made
}

/**
 * Aborts when the session ends, or with `gone`: a stream must not outlive the right to it. Where the end may have been
 * missed, `still` says whether the right stands.
 */
export function untilEnded(by: string | null, gone: AbortSignal, still: () => Promise<boolean>): AbortSignal {
  if (by === null) return gone
  const stream: Stream = { ender: new AbortController(), still }
  const all = streams()
  const own = all.get(by) ?? new Set()
  all.set(by, own.add(stream))
  const forget = () => {
    own.delete(stream)
    if (own.size === 0 && all.get(by) === own) all.delete(by)
  }
  gone.addEventListener('abort', forget, { once: true })
  return AbortSignal.any([gone, stream.ender.signal])
}

/** Ends its streams in every process. One that is cut off just now asks for itself when it is back. */
export const endedNow = (by: string): Promise<void> =>
  bus()
    .notify({ on: 'session-ended', id: by })
    .catch(() => undefined)
