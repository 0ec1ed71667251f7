/** Where the labels of moments stand: to the right of their poles or the left, how much of them, and on which step. */

export interface FlagWish {
  readonly pole: number
  /** Widths of the label from the fullest to the shortest. */
  readonly widths: readonly number[]
  /** What else of the flag lies on its step: the window's bar. */
  readonly bar: readonly [left: number, right: number]
}
export interface PlacedFlag {
  readonly side: 'right' | 'left'
  /** Which of the widths. */
  readonly cut: number
  /** 0 is the lowest. */
  readonly step: number
}
export interface FlagPlot {
  readonly left: number
  readonly right: number
  readonly now: number | null
}

/** Least air between a label and the next pole or flag, px. */
export const AIR = 8
/** From a pole to its label. */
export const LABEL_GAP = 6
const NOW_AIR = 5

interface Choice {
  readonly side: 'right' | 'left'
  readonly cut: number
  readonly left: number
  readonly right: number
}

/** More steps than this, and labels change sides where that makes the picture lower. */
const MOST_STEPS = 6

/**
 * No label is crossed by another's pole or by the now-line, none leaves the plot, and no two on one step touch. Given by
 * time; where all labels stand to the right of their poles it is a staircase that falls to the right.
 */
export function placeFlags(flags: readonly FlagWish[], plot: FlagPlot): PlacedFlag[] {
  const choices = flags.map((flag) => choicesOf(flag, plot))
  const taken = lowered(flags, choices, consistent(flags, choices))
  const chosen = chosenOf(choices, taken)
  const { steps } = stepsOf(flags, chosen)
  return chosen.map(({ side, cut }, i) => ({ side, cut, step: steps[i] ?? 0 }))
}
const chosenOf = (choices: readonly (readonly Choice[])[], taken: readonly number[]) =>
  taken.map((at, i) => choices[i]?.[at] as Choice)

/** The first choices in which no two would have to stand above each other. */
function consistent(flags: readonly FlagWish[], choices: readonly (readonly Choice[])[]): number[] {
  const taken = flags.map(() => 0)
  for (;;) {
    const chosen = chosenOf(choices, taken)
    const { stuck } = stepsOf(flags, chosen)
    const next =
      stuck.find((i) => chosen[i]?.side === 'right' && hasMore(choices[i], taken[i])) ??
      stuck.find((i) => hasMore(choices[i], taken[i]))
    if (next === undefined) return taken
    taken[next] = (taken[next] ?? 0) + 1
  }
}

/** One label after another to the side that brings the whole down most, while it is too high. */
function lowered(flags: readonly FlagWish[], choices: readonly (readonly Choice[])[], start: number[]): number[] {
  const heightOf = (taken: readonly number[]) => {
    const { steps, stuck } = stepsOf(flags, chosenOf(choices, taken))
    return stuck.length > 0
      ? Number.POSITIVE_INFINITY
      : Math.max(0, ...steps) + 1 + steps.reduce((a, b) => a + b, 0) / 1000
  }
  let best = { taken: start, height: heightOf(start) }
  for (let turn = 0; turn < flags.length && best.height > MOST_STEPS + 1; turn++) {
    const others = best.taken.flatMap((at, i) => {
      const cut = choices[i]?.[at]?.cut
      const other = choices[i]?.findIndex((choice, k) => k !== at && choice.cut === cut) ?? -1
      return other < 0 ? [] : [best.taken.with(i, other)]
    })
    const tried = others.map((taken) => ({ taken, height: heightOf(taken) }))
    const lower = tried.reduce((a, b) => (b.height < a.height ? b : a), best)
    if (lower === best) break
    best = lower
  }
  return best.taken
}
const hasMore = (choices: readonly Choice[] = [], taken = 0) => taken + 1 < choices.length

/** The fullest label first, to the right before the left. The last resort is the shortest, where it must stand. */
function choicesOf({ pole, widths }: FlagWish, { left, right, now }: FlagPlot): Choice[] {
  const all = widths.flatMap((width, cut): Choice[] => [
    { side: 'right', cut, left: pole + LABEL_GAP, right: pole + LABEL_GAP + width },
    { side: 'left', cut, left: pole - LABEL_GAP - width, right: pole - LABEL_GAP },
  ])
  const free = all.filter(
    (choice) =>
      choice.left >= left &&
      choice.right <= right &&
      (now === null || choice.right + NOW_AIR < now || choice.left > now + NOW_AIR),
  )
  return free.length > 0 ? free : all.slice(pole + (widths.at(-1) ?? 0) > right ? -1 : -2).slice(0, 1)
}

/** Steps by who must stand above whom; `stuck` are those that would have to stand above each other. */
function stepsOf(flags: readonly FlagWish[], chosen: readonly Choice[]): { steps: number[]; stuck: number[] } {
  const below = chosen.map((choice, i) => flags.flatMap(({ pole }, j) => (j !== i && crosses(pole, choice) ? [j] : [])))
  const steps: number[] = []
  const open = new Set(flags.map((_, i) => i))
  while (open.size > 0) {
    const ready = [...open].findLast((i) => below[i]?.every((j) => !open.has(j)))
    if (ready === undefined) return { steps, stuck: [...open] }
    open.delete(ready)
    steps[ready] = lowestFree(ready, below[ready] ?? [], flags, chosen, steps)
  }
  return { steps, stuck: [] }
}

/** Beside its own pole a label stands closer than its air: one that shares the pole's place does not cross it. */
const crosses = (pole: number, { side, left, right }: Choice): boolean =>
  side === 'right' ? pole > left - 4 && pole < right + AIR : pole > left - AIR && pole < right + 4

function lowestFree(
  i: number,
  below: readonly number[],
  flags: readonly FlagWish[],
  chosen: readonly Choice[],
  steps: readonly number[],
): number {
  const extent = (k: number) => {
    const { left = 0, right = 0 } = chosen[k] ?? {}
    const [from, to] = flags[k]?.bar ?? [left, right]
    return [Math.min(left, from), Math.max(right, to)] as const
  }
  const [left, right] = extent(i)
  const meets = (k: number) => {
    const [from, to] = extent(k)
    return left < to + AIR && from < right + AIR
  }
  let step = Math.max(0, ...below.map((j) => (steps[j] ?? 0) + 1))
  while (steps.some((other, k) => other === step && meets(k))) step++
  return step
}
