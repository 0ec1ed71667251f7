import type { Facts } from './facts'
import { LIMITS } from './limits'
import { type Violation, violation } from './violation'

/** A cook that is made for a moment of the first one, or for a clock time, is done before it in enough cooks. */
export function checkReadyCooks(facts: Facts): Violation[] {
  const told = facts.layout.conflicts.some((c) => c.rule === 'ready-late')
  return facts.shoot.cooks.flatMap(({ id, ready }) => {
    const share = ready && !told ? shareDone(facts, id) : null
    if (share === null || share >= LIMITS.readyShare) return []
    return [violation('cook-late', `"${id}" is ready in time in only ${Math.round(share * 100)} % of cooks.`)]
  })
}

/** Over a grid of both cooks' members: a roast knows nothing of how the other one runs. */
function shareDone({ shoot, forecast, meatOn, edge }: Facts, id: string): number | null {
  const ready = shoot.cooks.find((c) => c.id === id)?.ready
  const done = ready && forecast(id)?.moments[ready.moment ?? 'first-slice']
  if (!ready || !done) return null
  const { by } = ready
  const clock = 'clock' in by ? edge('', by.clock) : null
  const others = 'clock' in by ? null : forecast(by.cook)?.moments[by.moment]
  const due = clock === null ? Array.from(others ?? [], (s) => meatOn(shoot.cooks[0]?.id ?? '') + s * 1000) : [clock]
  if (due.length === 0) return null
  let inTime = 0
  for (const s of done) for (const d of due) if (meatOn(id) + s * 1000 <= d) inTime++
  return inTime / (done.length * due.length)
}
