/** A cook that must be done before a moment of the hero's, or a time of day: "one made earlier". */
import { z } from 'zod'
import { MOMENT_IDS, type MomentId } from '../model/moment-ids'
import type { Problem } from '../refusals'
import { CLOCK } from './clock-text'
import { record, word } from './fields'
import { momentsOf } from './moments'
import { quoted } from './nearest'
import type { Shoot } from './shoot'

export type ReadyBy = { readonly clock: string } | { readonly cook: string; readonly moment: MomentId }
const RULE = 'Write a moment of the first cook such as "hero/pull", or a time such as "18:30".'
const MOMENTS: readonly unknown[] = MOMENT_IDS

const by = z
  .unknown()
  .meta({ type: 'string', description: 'A moment of the first cook ("hero/pull") or a time of day ("18:30").' })
  .transform((written, ctx): ReadyBy => {
    if (typeof written === 'string' && CLOCK.test(written)) return { clock: written }
    const [cook = '', moment, more] = typeof written === 'string' ? written.split('/') : []
    if (MOMENTS.includes(moment) && more === undefined) return { cook, moment: moment as MomentId }
    const wrong =
      written === undefined ? 'What it must be ready by is missing here' : `${quoted(written)} is no moment of a cook`
    ctx.addIssue({ code: 'custom', message: `${wrong}. ${RULE}` })
    return z.NEVER
  })

/** `moment`: its own by which it counts as ready; without one it must be sliced. */
export const READY = record('what a cook must be ready by', {
  by,
  moment: word('a moment to be ready at', ['off-heat', 'first-slice']).optional(),
})

/** Only another cook waits for the first one, and only for a moment that it has. */
export function checkReady(shoot: Shoot): Problem[] {
  const [hero] = shoot.cooks
  return shoot.cooks.flatMap(({ ready }, i) => {
    if (!ready || !hero) return []
    const refuse = (sentence: string) => [{ pointer: `/cooks/${i}/ready/by`, sentence }]
    if (i === 0)
      return refuse(
        'The first cook sets the day; others are made ready for it. Take "ready" out, or give the day a wished "slice".',
      )
    if ('clock' in ready.by) return []
    if (ready.by.cook !== hero.id)
      return refuse(
        `${quoted(ready.by.cook)} is not the first cook. Write a moment of "${hero.id}", such as "${hero.id}/pull".`,
      )
    if (momentsOf(hero).includes(ready.by.moment)) return []
    return refuse(`"${hero.id}" has no ${ready.by.moment}. Write one it has, such as "${hero.id}/pull".`)
  })
}
