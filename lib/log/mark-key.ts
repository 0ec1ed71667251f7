import type { MomentId } from '../model/moment-ids'

/** Under which a mark is kept; apart from the fold, so that a phone's board need not load the schemas behind it. */
export const markKey = (cook: string, moment: MomentId) => `${cook}/${moment}`
