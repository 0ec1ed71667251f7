/** Texts of the start page and of the form for a new shoot. */

// New shoot
export const newShoot = 'New shoot'
export const sixQuestions = 'Six answers make a day. It is counted back from the first slice and drawn as you type.'
export const startFrom = 'Start from a sample'
export const startsFrom = (sample: string) => `“${sample}” is filled in.`
export const putBackTyped = 'Put back what stood here'
export const typedLastTime = 'This is what you typed last time.'
export const beginAnew = 'Begin anew'
export const save = 'Save and lay out the day'
export const saving = 'Saving'
export const saveNext = (shots: number) =>
  `Next: the day, laid out with ${shots} shots for a crew of four and two cameras. People and shots are changed there.`
export const later = 'All of this can wait'
export const laterWhy = 'It is filled in as is usual. Open what you know better; what you type is kept.'
