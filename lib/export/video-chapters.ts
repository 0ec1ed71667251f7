/** A stretch of the finished video: whole seconds from its start. */
export interface VideoChapter {
  readonly startS: number
  readonly endS: number
  readonly title: string
}

/** Whole seconds, in order, none empty, none beyond the end of the video where that is known. */
export function tidyChapters(chapters: readonly VideoChapter[], lengthS = Number.POSITIVE_INFINITY): VideoChapter[] {
  const whole = chapters
    .map(({ startS, endS, title }) => ({
      startS: Math.max(0, Math.round(startS)),
      endS: Math.min(Math.round(endS), Math.floor(lengthS)),
      title: title.trim(),
    }))
    .filter(({ startS, endS, title }) => endS > startS && title !== '')
    .sort((a, b) => a.startS - b.startS)
  return whole.filter(({ startS }, i) => i === 0 || startS > (whole[i - 1]?.startS ?? -1))
}
