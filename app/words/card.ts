/** Over the ingredients where they stand as a table. */
export const ingredientColumn = 'ingredient'
export const amountColumn = 'how much'
export const printsColumn = 'as it will print'
export const filesOfCard = 'Files of the card'
