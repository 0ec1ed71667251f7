import type { Problem } from '../refusals'
import { checkClips } from './clips'
import { checkDay } from './day-rules'
import { checkNames } from './name-rules'
import { checkReady } from './ready'
import { checkRoast } from './roast-rules'
import type { Shoot } from './shoot'
import { checkShots } from './shot-rules'
import { checkSides } from './sides'
import { checkStages } from './stage-rules'

/** What a shoot whose every field is well written can still get wrong between its fields. */
export const checkShoot = (shoot: Shoot): Problem[] => [
  ...checkDay(shoot),
  ...checkNames(shoot),
  ...shoot.cooks.flatMap((cook, i) => [...checkRoast(cook, `/cooks/${i}`), ...checkStages(cook, `/cooks/${i}`)]),
  ...checkReady(shoot),
  ...checkShots(shoot),
  ...checkSides(shoot),
  ...checkClips(shoot),
]
