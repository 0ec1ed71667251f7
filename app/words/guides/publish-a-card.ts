import type { Guide } from './guide'

export const publishACard: Guide = {
  id: 'publish-a-card',
  title: 'Publish a card',
  gives: 'A recipe on one sheet, as a page and as files, on which every figure was checked.',
  steps: [
    { says: 'Open the shoot, then [Card]: the recipe is written from the plan already.' },
    {
      says: 'Press [Change the words] at a sentence to say it your way, or [Add a sentence].',
    },
    {
      says: 'Where the check contradicts you, press [Use this sentence], or print yours with your reason.',
      picture: {
        name: 'card-check',
        alt: 'A sentence of the card with what the check says of it: the claim struck through, the figure and the reason beside it, and the sentence that would be true.',
      },
      caution:
        'Doneness below the food-safety authority’s minimum is printed with its caution. It cannot be taken off.',
    },
    {
      says: 'Fill in who wrote it and how many it serves; look through ingredients and allergens.',
      caution: 'Allergens are found by the ingredients’ names. What is inside a bought sauce you have to say yourself.',
    },
    {
      says: 'Press [See the card] and print it, or take a PDF, text or the recipe for search engines from [Files].',
      picture: {
        name: 'card-sheet',
        alt: 'The finished card: title, the slice as it is expected, times as a strip, what is needed on the left and eight steps on the right.',
      },
    },
    {
      says: 'Set [Who may read the page here] to anybody: readers at home get times for their own roast on it.',
    },
    { says: 'After the day look again: what was logged outranks what was forecast.' },
  ],
  wrong: [
    {
      sign: 'contradicted',
      todo: 'Nothing is printed against the check unless you say why. Both ways stand beneath it.',
    },
    {
      sign: 'cannot be checked',
      todo: 'No figure is known for it. It is printed as yours; say where you have it from.',
    },
    {
      sign: 'The code on paper leads nowhere',
      todo: 'Fill in [Address of your own page]: the code leads there.',
    },
  ],
}
