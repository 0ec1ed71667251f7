import type { HeatFacts } from '@/lib/export/heat-line-facts'
import type { BoardFacts } from '@/lib/session/board-facts'

/** What a screen of the set opens with besides the session; with it this morning's heat line of each roast. */
export type SetFacts = BoardFacts & { readonly heat?: Readonly<Record<string, HeatFacts>> }
