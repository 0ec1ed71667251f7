import 'server-only'

/** Next loads this file once per bundle. */
const shared = globalThis as { emberslateUnsettled?: Set<Promise<unknown>> }
const under = () => {
  shared.emberslateUnsettled ??= new Set()
  return shared.emberslateUnsettled
}

/**
 * Work that has a line in a journal which the database may not have: nobody may read the journals meanwhile. It may not wait
 * for `database()`, which is not opened again before the work is over.
 */
export function unsettled<T>(work: () => Promise<T>): Promise<T> {
  const one = work()
  const over = () => under().delete(one)
  under().add(one)
  one.then(over, over)
  return one
}

export async function settled(): Promise<void> {
  await Promise.allSettled(under())
}
