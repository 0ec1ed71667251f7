/** The last few results by what went in; the core is deterministic, so the same document never needs a second run. */
export function remembered<In, T, Beside extends readonly unknown[] = []>(
  kept: number,
  make: (of: In, ...beside: Beside) => T,
) {
  const results = new Map<string, T>()
  const keyOf = (of: In, beside: Beside) => JSON.stringify([of, ...beside])
  const keep = (made: T, of: In, ...beside: Beside): T => {
    results.set(keyOf(of, beside), made)
    if (results.size > kept) results.delete(results.keys().next().value as string)
    return made
  }
  const known = (of: In, ...beside: Beside) => results.get(keyOf(of, beside))
  const give = (of: In, ...beside: Beside): T => known(of, ...beside) ?? keep(make(of, ...beside), of, ...beside)
  return Object.assign(give, { known, keep })
}
