/** What is being computed, said while it is. Client screens take it too, so the ensemble's size is written out; a test holds it. */

const count = (n: number, one: string, many = `${one}s`) => `${n} ${n === 1 ? one : many}`

export const forecasting = 'Forecasting 256 cooks'
export const layingOut = (shots: number, people: number) =>
  `Laying out ${count(shots, 'shot')}, ${count(people, 'person', 'people')}`
export const checkingCard = 'Checking each sentence of the card against 256 cooks'
export const holdingDay = 'Holding the day against its plan'
export const playingDay = 'Playing the invented day to its end'
export const inventingDay = 'Inventing a day: a cook the plan does not know, its readings and its crew'
export const findingWhy = 'Cooking it again as it was logged, to say why it went so'
export const placingClips = 'Placing the day’s marks and takes in the clips'
export const otherSizes = 'Forecasting the times of other sizes'
export const otherHeat = 'Cooking the same roast at another heat'
export const triedDay = 'Cooking and laying out the day with this change'
export const restOfDay = 'Laying out the rest of the day'
export const awaitsFields = 'The heat line appears as soon as the fields can be read.'
export const printing = (what: string) => `Printing ${what}`
export const theCallSheet = 'the call sheet'
export const theCardWithSizes = 'the card, with the times of other sizes'
export const isSaved = (name: string) => `“${name}” is among this browser’s downloads.`
export const openInTab = 'Open it in a tab'
export const drawnAsFetched =
  'An overlay has a picture for each frame, drawn while it is fetched: the browser shows how far it is.'
/** Said after ten seconds. */
export const lastsHere =
  'It takes longer than it should, and goes on by itself. Nothing after a minute? Load the page again.'
