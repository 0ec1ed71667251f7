import { type Facts, isMoment } from './facts'
import { type Violation, violation } from './violation'

/** The shares the layout promises can be shares, of moments that are shot, and no joint one beats its parts. */
export function checkCapture(facts: Facts): Violation[] {
  const { booked, layout } = facts
  const { capture } = layout
  const known = new Set(booked.flatMap((b) => (b.shot.at ? [`${b.cook}/${b.shot.at.moment}`] : [])))
  return [capture, capture.openLoop].flatMap((promised, i) => {
    const name = i === 0 ? 'Called live' : 'By the clock alone'
    const shares = Object.entries(promised.each)
    const isShare = (n: number) => n >= 0 && n <= 1
    const found: Violation[] = []
    for (const [what, share] of [...shares, ['all together', promised.joint] as const])
      if (!isShare(share))
        found.push(
          violation('capture-range', `${name}, "${what}" is captured in ${share} of cooks; a share lies from 0 to 1.`),
        )
    const least = Math.min(1, ...shares.map(([, share]) => share))
    if (promised.joint > least + 1e-9)
      found.push(
        violation(
          'capture-joint',
          `${name}, all together are captured more often (${promised.joint}) than the least one (${least}).`,
        ),
      )
    for (const [what, share] of shares) found.push(...checkReached(facts, name, what, share))
    const keys = new Set(shares.map(([what]) => what))
    for (const what of [...keys].filter((k) => !known.has(k)))
      found.push(
        violation('capture-unknown', `${name}, a share is promised of "${what}", which no placed shot stands at.`),
      )
    for (const what of [...known].filter((k) => !keys.has(k)))
      found.push(violation('capture-unknown', `${name}, no share is given of "${what}", at which a shot stands.`))
    return found
  })
}

/** Nothing is captured in a cook in which it does not come. */
function checkReached(facts: Facts, name: string, what: string, share: number): Violation[] {
  const [cook = '', moment = ''] = what.split('/')
  const samples = isMoment(moment) ? facts.forecast(cook)?.moments[moment] : undefined
  if (!samples) return []
  const reached = samples.filter((s) => Number.isFinite(s)).length / samples.length
  if (share <= reached + 1 / samples.length) return []
  return [
    violation('capture-unreached', `${name}, "${what}" is promised in ${share} of cooks and comes in ${reached}.`),
  ]
}
