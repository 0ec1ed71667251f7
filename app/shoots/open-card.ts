import 'server-only'
import type { CardModel } from '@/lib/export/card'
import { type Chapter, chaptersOf } from '@/lib/export/chapters'
import type { Shoot } from '@/lib/plan/shoot'
import { openShoot } from '../workbench'
import { cardModelOf } from './card-model'
import { dayLogOf, type WhichDay } from './day-log'
import { publishedOf } from './published-at'

/** The card with where it is published, as its files are made from it. */
export async function openCard(shootId: string): Promise<{ shoot: Shoot; model: CardModel }> {
  const { shoot } = await openShoot(shootId)
  return { shoot, model: cardModelOf(shoot, await publishedOf(shootId, shoot)) }
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
