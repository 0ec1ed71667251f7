import type { CardModel } from './card'
import { plainWords } from './plain-words'
import { tidyChapters, type VideoChapter } from './video-chapters'

/** "4:05", "1:02:03": hours only where there are some. */
export function clockOf(seconds: number): string {
  const [h, m, s] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60]
  const two = (n: number) => String(n).padStart(2, '0')
  return h > 0 ? `${h}:${two(m)}:${two(s)}` : `${m}:${two(s)}`
}

/** Common practice, no source: video sites read a list of times as chapters where it begins with 0:00. */
function chapterLines(chapters: readonly VideoChapter[]): string[] {
  const first = chapters[0]
  if (!first) return []
  const opening = first.startS === 0 ? [] : [`${clockOf(0)} Beginning`]
  return ['Chapters', ...opening, ...chapters.map(({ startS, title }) => `${clockOf(startS)} ${plainWords(title)}`), '']
}

const paragraph = (text: string) => (text === '' ? [] : [plainWords(text), ''])

/** The text that stands under the video: what it is, where the card is, its chapters, the cautions, what was checked. */
export function videoDescription(model: CardModel, chapters: readonly VideoChapter[] = []): string {
  const { published } = model
  const told = tidyChapters(chapters, published.video?.length)
  const own = 'Times for your own roast, ingredients and steps are on the card'
  return `${[
    ...paragraph(published.video?.title ?? model.title),
    ...paragraph(model.intro),
    ...paragraph(published.at ? `${own}: ${published.at}` : ''),
    ...chapterLines(told),
    ...[...model.cautions, ...model.housekeeping].map((caution) => `Caution: ${plainWords(caution)}`),
    ...(model.cautions.length + model.housekeeping.length > 0 ? [''] : []),
    ...paragraph(model.foot),
  ]
    .join('\n')
    .trim()}\n`
}
