import type { CookerKind } from '../model/cook'
import { COOKERS } from '../model/cooker'
import { MOMENT_IDS, type MomentId } from '../model/moment-ids'

/** As much of a cook as decides which moments it has; a parsed cook is one, and so is a well-formed document's. */
export interface CookSketch {
  readonly id: string
  readonly cooker: { readonly kind: string }
  readonly stages: readonly {
    readonly do: string
    readonly turn?: unknown
    readonly probe?: { readonly at: unknown }
    readonly cold?: boolean
    readonly over?: unknown
  }[]
}

const habitsOf = (kind: string) => (kind in COOKERS ? COOKERS[kind as CookerKind] : undefined)
/** Cookers whose vents are opened for a sear. */
export const burnsSolidFuel = (kind: string) => habitsOf(kind)?.vents ?? false

/** The moments that this cook's plan has, in reading order. */
export function momentsOf(cook: CookSketch): MomentId[] {
  const sears = cook.stages.some((stage) => stage.do === 'sear')
  const turns = cook.stages.some((stage) => stage.do === 'roast' && stage.turn !== undefined)
  const absent = new Set<MomentId>()
  // An oven that starts cold with the meat in it is never steady before meat-on.
  if (cook.stages.some((stage) => stage.do === 'preheat' && stage.cold)) absent.add('cooker-steady')
  if (!turns) absent.add('turn')
  if (!sears) absent.add('sear-start')
  const opens = cook.stages.some((stage) => stage.do === 'sear' && stage.over === undefined)
  if (!opens || !burnsSolidFuel(cook.cooker.kind)) absent.add('vents-open')
  return MOMENT_IDS.filter((id) => !absent.has(id))
}

/** The crew's word for a moment. */
export function momentName(id: MomentId, cooker: string): string {
  const fire = burnsSolidFuel(cooker)
  const names: Record<MomentId, string> = {
    'fire-lit': fire ? 'fire lit' : `${shortName(cooker)} on`,
    'cooker-steady': 'cooker steady',
    'meat-on': habitsOf(cooker)?.indoors === false ? 'meat on' : 'meat in',
    turn: 'turn',
    'probe-in': 'probe in',
    pull: 'pull temperature',
    'vents-open': 'vents open',
    'sear-start': 'sear',
    'off-heat': 'off the heat',
    'carryover-peak': 'carryover peak',
    'first-slice': 'first slice',
  }
  return names[id]
}

/** What is switched on, where no fire is lit. */
const SHORT_NAMES: Record<string, string> = { pellet: 'cooker', 'gas-grill': 'grill', 'water-bath': 'bath' }
export const shortName = (kind: string) => SHORT_NAMES[kind] ?? 'oven'

const COOKER_NAMES: Readonly<Record<CookerKind, string>> = {
  'kettle-charcoal': 'kettle, charcoal',
  'ceramic-charcoal': 'ceramic, charcoal',
  oven: 'oven',
  'convection-oven': 'convection oven',
  'offset-wood': 'offset, wood',
  pellet: 'pellet cooker',
  'gas-grill': 'gas grill',
  'water-bath': 'water bath',
}
export const cookerName = (kind: string) => COOKER_NAMES[kind as CookerKind] ?? kind
