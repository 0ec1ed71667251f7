import 'server-only'
import { BorderError } from '../border-error'
import { database } from '../client'
import { unsettled } from '../unsettled'
import { requireRoom } from './disk-room'
import { wayOnFrom, whyRefused } from './disk-words'

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
  if (folder === null) await store()
  else
    await unsettled(async () => {
      await requireRoom(folder)
      await inFolder(() => append(folder), refusal, store)
    })
}

async function inFolder(
  append: () => Promise<() => Promise<void>>,
  refusal: (why: string) => string,
  store: () => Promise<unknown>,
): Promise<void> {
  const takeBack = await append().catch((fault: Error) => {
    if (fault instanceof BorderError) throw fault
    throw new BorderError('disk-refused', { sentence: `${refusal(whyRefused(fault))} ${wayOnFrom(fault)}` })
  })
  try {
    await store()
  } catch (fault) {
    await takeBack()
    throw fault
  }
}
