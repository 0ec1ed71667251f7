import 'server-only'
import { type CookFacts, cookFacts } from '@/lib/log/cook-facts'
import type { Shoot } from '@/lib/plan/shoot'
import { dayLogOf, type WhichDay } from './day-log'

/** What the day says of the card's own cook; null before its meat went on. */
export async function cardFactsOf(
  shootId: string,
  shoot: Shoot,
  which: WhichDay = {},
): Promise<{ facts: CookFacts | null; invented: boolean }> {
  const [cook] = shoot.cooks
  const { day, invented } = await dayLogOf(shootId, shoot, which)
  return { facts: cook ? cookFacts(day, cook.id) : null, invented }
}
