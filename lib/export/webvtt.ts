import type { Seconds } from '../units'

/** One cue of chapters or captions. */
export interface Cue {
  readonly startS: Seconds
  readonly endS: Seconds
  readonly text: string
}

/**
 * A WebVTT file. `notes` stand before the cues and are shown to nobody.
 *
 * Source: W3C, WebVTT: The Web Video Text Tracks Format, sections 4.1 (file structure) and 4.2.2 (escapes of cue text).
 */
export function webVtt(cues: readonly Cue[], notes: readonly string[] = []): string {
  const blocks = [
    ...notes.map((note) => `NOTE\n${plain(note)}`),
    ...cues.filter(({ startS, endS }) => ms(endS) > ms(startS)).map(cueBlock),
  ]
  return `${['WEBVTT', ...blocks].join('\n\n')}\n`
}

const cueBlock = ({ startS, endS, text }: Cue, i: number) =>
  `${i + 1}\n${stamp(startS)} --> ${stamp(endS)}\n${escaped(text)}`

const ms = (time: Seconds) => Math.round(time * 1000)
function stamp(time: Seconds): string {
  const total = ms(time)
  const two = (n: number) => String(Math.floor(n)).padStart(2, '0')
  const thousandths = String(total % 1000).padStart(3, '0')
  return `${two(total / 3_600_000)}:${two((total / 60_000) % 60)}:${two((total / 1000) % 60)}.${thousandths}`
}

/** An empty line ends a cue; "-->" may stand in no text. */
const lines = (text: string) =>
  text
    .split(/[\r\n]+/)
    .map((line) => line.trim())
    .filter((line) => line !== '')
    .join('\n')
const escaped = (text: string) => lines(text).replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;')
const plain = (text: string) => lines(text).replaceAll('-->', '→')
