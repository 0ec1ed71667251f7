/** Groups in order of their first member; `Map.groupBy` is younger than Node 20 and many phones. */
export function groupBy<T, K>(all: Iterable<T>, key: (one: T) => K): Map<K, T[]> {
  const groups = new Map<K, T[]>()
  for (const one of all) {
    const group = groups.get(key(one))
    if (group) group.push(one)
    else groups.set(key(one), [one])
  }
  return groups
}
