import type { Shoot } from '@/lib/plan/shoot'

/** By what the work of shoots is told apart, so that each has its turn: a shoot that is not saved yet has no other name. */
export const whoseIs = ({ date, title }: Shoot): string => `${date} ${title}`
