import { type Lettering, type Mark, type TextMark, text } from './drawing'
import { type Box, overlap, textBox } from './text-width'

export const LETTERING = {
  axis: { size: 14, weight: 600, face: 'condensed', role: 'ink-2' },
  day: { size: 14, weight: 800, face: 'condensed', role: 'ink' },
  lane: { size: 13.5, weight: 600, face: 'sans', role: 'ink' },
  small: { size: 12.5, weight: 500, face: 'condensed', role: 'ink-2' },
  name: { size: 13.5, weight: 600, face: 'condensed', role: 'ink' },
  time: { size: 15, weight: 800, face: 'condensed', role: 'ember' },
  past: { size: 15, weight: 800, face: 'condensed', role: 'ink' },
  read: { size: 15, weight: 800, face: 'condensed', role: 'ink' },
  now: { size: 15, weight: 800, face: 'condensed', role: 'paper' },
  lightTime: { size: 13, weight: 800, face: 'condensed', role: 'ink' },
  number: { size: 12.5, weight: 800, face: 'condensed', role: 'cool' },
  call: { size: 12.5, weight: 700, face: 'condensed', role: 'cool' },
  say: { size: 22, weight: 600, face: 'serif', role: 'ink' },
  why: { size: 15, weight: 400, face: 'sans', role: 'ink-2' },
} as const satisfies Record<string, Lettering>

/**
 * A picture being drawn. Lettering lies on top of everything; what has been lettered is taken, and lettering that may
 * stand in several places takes the first that is free, or stays away.
 */
export interface Sheet {
  readonly draw: (...marks: readonly Mark[]) => void
  /** Lettering whose place is given. */
  readonly letter: (...marks: readonly TextMark[]) => void
  /** Each choice is one label, of one line or more; true where one found room. */
  readonly letterWhereFree: (...choices: readonly (readonly TextMark[])[]) => boolean
  /** A part of the picture that no free label may cover. */
  readonly take: (...boxes: readonly Box[]) => void
  readonly marks: () => Mark[]
}

/** `width`: lettering that may stand in several places takes none outside it. */
export function newSheet(width: number): Sheet {
  const drawn: Mark[] = []
  const lettered: TextMark[] = []
  const taken: Box[] = []
  const letter = (...marks: readonly TextMark[]) => {
    lettered.push(...marks)
    taken.push(...marks.map(textBox))
  }
  const isFree = (mark: TextMark) => {
    const own = textBox(mark)
    return own.left >= 0 && own.right <= width && own.top >= 0 && taken.every((box) => !overlap(own, box, 1))
  }
  return {
    draw: (...marks) => drawn.push(...marks),
    letter,
    letterWhereFree: (...choices) => {
      const free = choices.find((label) => label.every(isFree))
      if (free) letter(...free)
      return free !== undefined
    },
    take: (...boxes) => taken.push(...boxes),
    marks: () => [...drawn, ...lettered],
  }
}

/** The ground of an upright line, for `take`. */
export const upright = (x: number, top: number, bottom: number): Box => ({ left: x - 2, right: x + 2, top, bottom })

export const lettering = {
  start: (x: number, y: number, words: string, how: Lettering, halo = true) => text(x, y, words, how, { halo }),
  middle: (x: number, y: number, words: string, how: Lettering, halo = true) =>
    text(x, y, words, how, { anchor: 'middle', halo }),
  end: (x: number, y: number, words: string, how: Lettering, halo = true) =>
    text(x, y, words, how, { anchor: 'end', halo }),
}
