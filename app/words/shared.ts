/** Texts that stand on more than one page. */
export const noMeaningHere = 'Not here without a signal. The glossary stands under Help.'
export const putBack = 'Put it back'
export const undo = 'Undo'
export const takenOut = (what: string) => `${what} is taken out.`
