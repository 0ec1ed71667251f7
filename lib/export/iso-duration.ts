import type { Seconds } from '../units'

/** "PT2H45M": a time as ISO 8601 writes it, without years and months; a range has no such form. */
export function isoDuration(time: Seconds): string {
  const whole = Math.round(time)
  const [d, h, m, s] = [
    Math.floor(whole / 86400),
    Math.floor(whole / 3600) % 24,
    Math.floor(whole / 60) % 60,
    whole % 60,
  ]
  const clock = `${h ? `${h}H` : ''}${m ? `${m}M` : ''}${s ? `${s}S` : ''}`
  return `P${d ? `${d}D` : ''}${clock ? `T${clock}` : d ? '' : 'T0S'}`
}
