/** Members marched eight at a time: a lane that is done is given the next member at once, so that none stands idle. */
import { memberFire } from '../roast'
import type { Run, Setting } from '../simulate'
import type { Member } from '../spread'
import { type Marching, stagesOf } from '../stages'
import { kernel } from './kernel'
import { Lane } from './lane'
import { LANES } from './layout'
import { share } from './share'

interface Work {
  readonly m: number
  readonly lane: Lane
  readonly stages: Marching<Run>
}

export function simulateEight(setting: Setting, members: readonly Member[], engine = kernel()): Run[] {
  share(engine, setting)
  const runs: Run[] = new Array(members.length)
  let next = 0
  /** The next member that has a march before it; none when there is no member left. */
  const begin = (n: number): Work | undefined => {
    while (next < members.length) {
      const m = next++
      const member = members[m] as Member
      const fire = memberFire(setting, member)
      const lane = new Lane(engine, n, setting, member, fire)
      const work = { m, lane, stages: stagesOf(setting, member, fire, lane) }
      if (goOn(work, false, runs)) return work
    }
    return undefined
  }
  const works = Array.from({ length: LANES }, (_, n) => begin(n))
  while (works.some((work) => work !== undefined)) {
    const stopped = engine.advance()
    for (let n = 0; n < LANES; n++) {
      const work = works[n]
      if (work === undefined || ((stopped >> n) & 1) === 0 || !work.lane.arrived()) continue
      if (!goOn(work, work.lane.met, runs)) works[n] = begin(n)
    }
  }
  return runs
}

/** Takes a member on to its next march; false where its cook is done. */
function goOn({ m, lane, stages }: Work, met: boolean, runs: Run[]): boolean {
  for (let told = met; ; told = false) {
    const now = stages.next(told)
    if (now.done) {
      runs[m] = now.value
      lane.rest()
      return false
    }
    if (lane.start(now.value)) return true
  }
}
