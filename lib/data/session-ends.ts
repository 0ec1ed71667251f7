import 'server-only'

/** Open event streams by the session or key they were opened with; one for all of Next's bundles. */
const shared = globalThis as { emberslateOpenStreams?: Map<string, Set<AbortController>> }
const streams = () => {
  shared.emberslateOpenStreams ??= new Map()
  return shared.emberslateOpenStreams
}

/** Aborts when the session ends, or with `gone`: a stream must not outlive the right to it. */
export function untilEnded(by: string | null, gone: AbortSignal): AbortSignal {
  if (by === null) return gone
  const ender = new AbortController()
  const own = streams().get(by) ?? new Set()
  streams().set(by, own.add(ender))
  const forget = () => {
    own.delete(ender)
    if (own.size === 0 && streams().get(by) === own) streams().delete(by)
  }
  gone.addEventListener('abort', forget, { once: true })
  return AbortSignal.any([gone, ender.signal])
}

export function endedNow(by: string): void {
  for (const ender of streams().get(by) ?? []) ender.abort()
  streams().delete(by)
}
