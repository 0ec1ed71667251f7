import type { ShootDocument } from '@/lib/plan/shoot'

/** "2027-05-15-leg-of-lamb", for a file that is kept. */
export const fileNameOf = ({ title, date }: ShootDocument) =>
  `${date}-${String(title)
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')}`
