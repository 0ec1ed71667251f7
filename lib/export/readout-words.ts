/** What can be read off the heat line at any minute, small enough to travel to the page. Index 0 is the axis's start. */
export interface Readout {
  readonly minutes: number
  /** From this index on the zone's clock reads so many minutes after midnight; a second entry where the clock changes. */
  readonly clock: readonly { readonly index: number; readonly minuteOfDay: number }[]
  /** The probe's [low, likely, high] in the person's degrees, null before the meat is on. */
  readonly probe: readonly (readonly [number, number, number] | null)[]
  readonly cooker: readonly (number | null)[]
  readonly degrees: '°C' | '°F'
  /** Who is at work from one index to another. */
  readonly spells: readonly { readonly from: number; readonly to: number; readonly words: string }[]
}

/** "19:30: probe 39 °C, 37 to 41; cooker 150 °C; camera A: Table laid". */
export function readoutWords(readout: Readout, index: number): string {
  const part = readout.clock.findLast((p) => p.index <= index)
  const minute = ((part?.minuteOfDay ?? 0) + index - (part?.index ?? 0)) % 1440
  const clock = `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`
  const probe = readout.probe[index]
  const cooker = readout.cooker[index]
  const parts = [
    probe ? `probe ${probe[1]} ${readout.degrees}, ${probe[0]} to ${probe[2]}` : '',
    cooker === null || cooker === undefined ? '' : `cooker ${cooker} ${readout.degrees}`,
    ...readout.spells.filter((spell) => spell.from <= index && index < spell.to).map((spell) => spell.words),
  ].filter(Boolean)
  return parts.length > 0 ? `${clock}: ${parts.join('; ')}` : `${clock}: nothing planned`
}
