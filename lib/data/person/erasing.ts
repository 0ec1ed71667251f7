import 'server-only'
import { z } from 'zod'
import { SmallFile } from '../small-file'

const RENAMED = z.record(z.string(), z.string())
const ERASING = z.object({
  shoot: z.string(),
  at: z.number(),
  /** Of the version that says when something was erased. */
  writeId: z.string(),
  plan: z.object({
    ids: RENAMED,
    own: z.array(z.string()),
    devices: RENAMED,
    names: z.array(z.string()),
    telling: z.array(z.string()),
    phones: z.array(z.string()),
    notes: z.boolean(),
  }),
  photos: z.array(z.string()),
})
/** What an erasure is about to do. It is written down first and goes when all is done, so that one cut off is finished. */
export type Erasing = z.output<typeof ERASING>
const file = new SmallFile<readonly Erasing[]>('door/erasing.json', z.array(ERASING), [])

export const beginErasing = (one: Erasing) => file.change((all) => [...all, one])
export const endErasing = (writeId: string) => file.change((all) => all.filter((one) => one.writeId !== writeId))
/** Those that were cut off. */
export const unfinishedErasures = () => file.read()
