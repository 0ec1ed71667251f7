import 'server-only'
import type { CardModel } from '@/lib/export/card'
import { type Chapter, chaptersOf } from '@/lib/export/chapters'
import type { Shoot } from '@/lib/plan/shoot'
import { sizesReady } from '../sizes-ready'
import { openShoot } from '../workbench'
import { cardFactsOf } from './card-facts'
import { cardModelOf } from './card-model'
import { dayLogOf, type WhichDay } from './day-log'
import { publishedOf } from './published-at'

/** The card with where it is published. Times for other sizes are in it once they are worked out. */
export async function openCard(shootId: string): Promise<{ shoot: Shoot; model: CardModel }> {
  const { shoot } = await openShoot(shootId)
  const { facts } = await cardFactsOf(shootId, shoot)
  return { shoot, model: cardModelOf(shoot, await publishedOf(shootId, shoot), facts) }
}

/** The card with all its parts, as its files are made from it: the first who asks waits for the other sizes. */
export async function openWholeCard(shootId: string) {
  await sizesReady((await openShoot(shootId)).shoot)
  return openCard(shootId)
}

/** Chapters of the finished video; none while no clip has its place in it, for then their times are the day's. */
export async function videoChapters(
  shootId: string,
  shoot: Shoot,
  which: WhichDay = {},
): Promise<{ chapters: readonly Chapter[]; invented: boolean }> {
  if (!shoot.clips?.some((clip) => clip.in !== undefined)) return { chapters: [], invented: false }
  const { day, invented } = await dayLogOf(shootId, shoot, which)
  return { chapters: chaptersOf(shoot, day), invented }
}
