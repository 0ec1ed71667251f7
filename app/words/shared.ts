/** Texts that stand on more than one page. */
export const noMeaningHere = 'Not here without a signal. The glossary stands under Help.'
