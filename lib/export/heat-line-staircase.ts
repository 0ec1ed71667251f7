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

/**
 * No label is crossed by another's pole or by the now-line, none leaves the plot, and no two on one step touch. Given by
 * time; where all labels stand to the right of their poles it is a staircase that falls to the right.
 */
export function placeFlags(flags: readonly FlagWish[], plot: FlagPlot): PlacedFlag[] {
  const choices = flags.map((flag) => choicesOf(flag, plot))
  const taken = flags.map(() => 0)
  for (;;) {
    const chosen = taken.map((at, i) => choices[i]?.[at] as Choice)
    const { steps, stuck } = stepsOf(flags, chosen)
    const next =
      stuck.find((i) => chosen[i]?.side === 'right' && hasMore(choices[i], taken[i])) ??
      stuck.find((i) => hasMore(choices[i], taken[i]))
    if (next === undefined) return chosen.map(({ side, cut }, i) => ({ side, cut, step: steps[i] ?? 0 }))
    taken[next] = (taken[next] ?? 0) + 1
  }
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
