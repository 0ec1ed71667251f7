import type { MomentId } from '@/lib/model/moment-ids'

const NAMES: Record<MomentId, string> = {
  'fire-lit': 'fire lit',
  'cooker-steady': 'cooker steady',
  'meat-on': 'meat on',
  turn: 'turn',
  'probe-in': 'probe in',
  pull: 'pull temperature',
  'vents-open': 'vents open',
  'sear-start': 'sear',
  'off-heat': 'off the heat',
  'carryover-peak': 'carryover peak',
  'first-slice': 'first slice',
}
export const momentName = (id: MomentId) => NAMES[id]
