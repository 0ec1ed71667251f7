import 'server-only'
import { BorderError } from './border-error'
import { database } from './client'

/**
 * In a folder: the journal first, then the database, then the answer; if the database fails, the lines are taken back and
 * nothing was kept. A server answers for its disk itself and has no journal.
 */
export async function journalFirst(
  append: (folder: string) => Promise<() => Promise<void>>,
  refusal: (why: string) => string,
  store: () => Promise<unknown>,
): Promise<void> {
  const { folder } = await database()
  const takeBack =
    folder === null
      ? undefined
      : await append(folder).catch((fault: Error) => {
          throw new BorderError('disk-refused', { sentence: refusal(fault.message) })
        })
  try {
    await store()
  } catch (fault) {
    await takeBack?.()
    throw fault
  }
}
