/** Over the ingredients where they stand as a table. */
export const ingredientColumn = 'ingredient'
export const amountColumn = 'how much'
export const printsColumn = 'as it will print'
export const filesOfCard = 'Files of the card'

// card/allergen-fields.tsx
export const allergensWords = 'Allergens'
export const allergensWhy = 'Those of known foods are found by themselves. Tick what else is in it.'
export const inWords = (foods: string) => `in ${foods}`

// card/card-desk.tsx
export const sentenceOfYourOwn = 'A sentence of your own.'
export const done = 'Done'
export const changeWords = 'Change the words'
export const leftOutOfCard = 'Left out of the card.'
export const addSentence = 'Add a sentence'
export const titleWords = 'Title'
export const yourOwn = 'Your own'
export const wordsOf = (id: string) => `Words of ${id}`
export const isCheckedAsYouWrite = 'Every number, time, temperature and word such as “safe” is checked as you write.'
export const useThisSentence = 'Use this sentence'
export const printMine = 'Print mine, as my own statement, with my reason'
export const doNotPrintIt = 'Do not print it after all'
export const authorsReason = (reason: string) => `The author’s reason: ${reason}`
export const myReason = 'My reason'
export const printItAsMine = 'Print it as mine'

// card/files.tsx
export const pdfUsLetter = 'PDF, US Letter'
export const pdfSmallCard = 'PDF, small card'
export const markdown = 'Markdown'
export const plainText = 'Plain text'
export const recipeForSearchEngines = 'Recipe for search engines'
export const wordsUnderVideo = 'Words under the video'
export const richResultNeeds = (required: string) => `For a rich result the page still needs ${required}.`
export const searchEnginesLike = (helpful: string) => `Search engines would also like ${helpful}.`

// card/finding.tsx
export const authorsOpinion = 'the author’s opinion'
export const printedAsAuthorsOwnStatement = ', printed as the author’s own statement'
export const judgedByPlan = 'Judged by the plan'
export const judgedByModel = 'Judged by the model'
export const judgedByDaysLog = 'Judged by the day’s log'
export const judgedByPublishedTable = 'Judged by a published table'
export const version = (named: string) => `, version ${named}`
export const figuresBorneOut = (count: number) => `${count} figures borne out`

// card/ingredient-row.tsx
export const ingredientWords = (nth: number) => `Ingredient ${nth}`
export const howMuch = (nth: number) => `How much of ${nth}`
export const ingredientCounts = (nth: number) => `Ingredient ${nth} counts as`
export const takeOut = 'Take out'
export const ingredientNamed = (nth: number) => `ingredient ${nth}`
export const printsAs = 'Prints as'
export const printsWithoutAmount = 'Prints without an amount. '
export const isTheRoast = 'The roast itself: reckoned by the plan’s own weight.'
export const notFood = 'Not food, so not in the nutrition.'
export const notOneOfOurFoods =
  'Not one of our foods: its allergens and nutrition are not known. If it is made of one, say which.'
export const itsCompositionIsNotKnown = ' Its composition is not known'
export const whatItWeighs = ' What it weighs is not known'
export const knownAs = (name: string, from: string, contains: string, what: string) =>
  `Known as ${name}${from}.${contains}${what}`

// card/page.tsx
export const cardWords = 'Card'
export const noDayHasBeenFilmed = 'No day has been filmed yet. '
export const lookAtRehearsedDay = 'Look at it with the rehearsed day'
export const seeCard = 'See the card'
export const cautionsOnCard = 'Cautions on the card'

// card/publish-fields.tsx
export const whoMayReadPageHere = 'Who may read the page here'
export const openWhy = 'Anybody who has its address may read the card, and nothing else.'
export const author = 'Author'
export const addressOfYourOwnPage = 'Address of your own page'
export const ownPageWhy = 'The code on paper leads there.'
export const addressOfPicture = 'Address of the picture'
export const addressOfVideo = 'Address of the video'
export const titleOfVideo = 'Title of the video'
export const dayItWasPutUp = 'Day it was put up'
export const lengthOfVideo = 'Length of the video'
export const videoLengthWhy = 'Such as 12 min 30 s.'
export const kindOfDish = 'Kind of dish'
export const dishWhy = 'Such as main course.'
export const cuisine = 'Cuisine'
export const keywords = 'Keywords'
export const keywordsWhy = 'Commas between them.'
export const whereItIsPublished = 'Where it is published'

// card/recipe-fields.tsx
export const youNeed = 'You need'
export const servesWords = 'Serves'
export const servesWhy = 'Nutrition is printed for one of so many servings.'
export const addIngredient = 'Add an ingredient'
export const elseToHave = 'What else to have, one a line'
export const elseWhy = 'Fuel, thermometer, tongs, board and foil come from the plan.'
export const keepingNote = 'Your own note on keeping it'
export const keepingNoteWhy = 'Printed as yours, after what the food-safety authority advises.'

// card/sheet/card-sheet.tsx
export const by = (author: string) => `By ${author}`
export const yourRoastIsAnotherSize = 'Your roast is another size? Times for yours'
export const stepsWords = 'Steps'
export const howLongItTakes = 'How long it takes'
export const afterwards = 'Afterwards'

// card/sheet/card-tables.tsx
export const howDone = 'How done'
export const whenSliced = 'when sliced'
export const middleWords = 'middle'
export const offHeatAt = 'off the heat at'
export const authoritySays = 'the authority says'
export const howYouKnow = 'How you know'
export const stageWords = 'stage'
export const byItsTemperature = 'by its temperature'
export const roughlyWords = 'roughly'
export const yoursIsAnotherSize = 'Yours is another size?'
export const thickestPart = 'thickest part'
export const perServingEstimate = 'Per serving, an estimate'

// card/sheet/page.tsx
export const theCard = 'The card'
export const backToSentences = 'Back to the sentences'
export const pageAnybodyMayRead = 'The page anybody may read'
export const asReadersWouldSee = 'As readers would see it'
export const pdfA4 = 'PDF, A4'

// card/tally.ts
export const nothingOnCardIsContradicted = 'Nothing on the card is contradicted.'
export const oneSentenceOnCard = 'One sentence on the card is not true yet.'

export const leaveOut = 'Leave it out of the card'
export const leftOut = (name: string) => `“${name}” is left out of the card.`
export const notPrinted = 'It is not printed any more, and your reason is put by.'
export const trueTaken = 'The true sentence stands in place of yours.'

// card/card-desk.tsx: the texts that are no steps
export const firstLine = 'First line'
export const keeping = 'Keeping'
export const borneOut = (words: string) => `borne out: ${words}`
