import type { MomentId } from '../model/moment-ids'

/** A moment inside a sentence, as its subject; the vents are several. */
const NAMES: Record<MomentId, string> = {
  'fire-lit': 'the lighting',
  'cooker-steady': 'the steady cooker',
  'meat-on': 'meat-on',
  turn: 'the turn',
  'probe-in': 'the probe',
  pull: 'the pull',
  'vents-open': 'the vents',
  'sear-start': 'the sear',
  'off-heat': 'off the heat',
  'carryover-peak': 'the carryover peak',
  'first-slice': 'the first slice',
}
export const momentName = (moment: MomentId) => NAMES[moment]
export const comes = (moment: MomentId) => (moment === 'vents-open' ? 'come' : 'comes')
export const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)
export const quoted = (title: string) => `"${title}"`

/** "cam-1", "cam-1 and cam-2", "cam-1, cam-2 and stylist". */
export function listed(names: readonly string[]): string {
  const last = names.at(-1) ?? ''
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} and ${last}`
}
/** "4 cooks of 100", or of 1000 where it is rare. */
export function cooksOf(share: number): string {
  const of = share > 0 && share < 0.01 ? 1000 : 100
  const n = Math.max(share > 0 ? 1 : 0, Math.round(share * of))
  return `${n} ${n === 1 ? 'cook' : 'cooks'} of ${of}`
}
export const minutesText = (minutes: number) => `${Math.round(minutes)} min`
const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth']
export const ordinal = (n: number) => ORDINALS[n - 1] ?? `${n}th`
