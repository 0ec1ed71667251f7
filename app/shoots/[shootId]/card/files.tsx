import type { Published } from '@/lib/export/published'
import { stillNeeded } from '@/lib/export/recipe-json-ld'
import { MadeFiles } from '../../../ui/made-files'
import {
  filesOfCard,
  markdown,
  pdfSmallCard,
  pdfUsLetter,
  plainText,
  recipeForSearchEngines,
  richResultNeeds,
  searchEnginesLike,
  wordsUnderVideo,
} from '../../../words/card'
import { printing, theCardWithSizes } from '../../../words/working'

const FILES: readonly (readonly [string, string])[] = [
  ['card.pdf?paper=A4', 'PDF, A4'],
  ['card.pdf?paper=Letter', pdfUsLetter],
  ['card.pdf?paper=small', pdfSmallCard],
  ['card.md', markdown],
  ['card.txt', plainText],
  ['card.json', recipeForSearchEngines],
  ['description.txt', wordsUnderVideo],
]

/** Every file that is made from the card, in one line. */
export function CardFiles({ shootId }: { shootId: string }) {
  return (
    <MadeFiles what={printing(theCardWithSizes)}>
      <ul className="link-row" aria-label={filesOfCard}>
        {FILES.map(([file, name]) => (
          <li key={file}>
            <a className="textlink" href={`/shoots/${shootId}/${file}`}>
              {name}
            </a>
          </li>
        ))}
      </ul>
    </MadeFiles>
  )
}

const listed = (words: readonly string[]) =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`

/** What the author could still write, in one line. */
export function StillNeeded({ published, servings }: { published: Published; servings: number | null }) {
  const { required, helpful } = stillNeeded({ published, servings })
  if (required.length + helpful.length === 0) return null
  const must = required.length > 0 ? richResultNeeds(listed(required)) : ''
  const better = helpful.length > 0 ? searchEnginesLike(listed(helpful)) : ''
  return <p className="small mt-2 max-w-3xl">{[must, better].filter(Boolean).join(' ')}</p>
}
