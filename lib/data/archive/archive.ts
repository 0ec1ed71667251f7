import { z } from 'zod'

/** What stands in the archive of a shoot. One zip: `archive.json` says whose, then the parts, then photos/NAME. */
export const PARTS = {
  head: 'archive.json',
  shoot: 'shoot.json',
  versions: 'versions.ndjson',
  log: 'log.ndjson',
  forecasts: 'forecasts.ndjson',
} as const
export const PHOTOS = 'photos/'

export const HEAD = z.object({
  emberslateArchive: z.literal(1),
  id: z.string().regex(/^[a-z0-9-]{1,40}$/),
})
export type Head = z.output<typeof HEAD>
export const headText = (id: string) => `${JSON.stringify({ emberslateArchive: 1, id } satisfies Head)}\n`

export const shootText = (document: unknown) => `${JSON.stringify(document, null, 2)}\n`
