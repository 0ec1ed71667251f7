/** Texts of the start page and of the form for a new shoot. */

// New shoot
export const newShoot = 'New shoot'
export const sixQuestions = 'Six answers make a day. It is counted back from the first slice and drawn as you type.'
export const startFrom = 'Start from a sample'
export const startsFrom = (sample: string) => `“${sample}” is filled in.`
export const putBackTyped = 'Put back what stood here'
export const isBack = 'What stood here is back.'
export const typedLastTime = 'This is what you typed last time.'
export const begunAnew = 'The form is as it was at first.'
export const beginAnew = 'Begin anew'
export const save = 'Save and lay out the day'
export const saving = 'Saving'
export const saveNext = (shots: number) =>
  `Next: the day, laid out with ${shots} shots for a crew of four and two cameras. People and shots are changed there.`
/** On the day of a shoot that nobody has changed since it was saved first. */
export const laidOutFirst =
  'The day is laid out. Change people and shots here as they really are; then Calls tells everybody where to be.'
export const later = 'All of this can wait'
export const laterWhy = 'It is filled in as is usual. Open what you know better; what you type is kept.'

// Start page
export const name = 'Emberslate'
export const whatItIs = 'Plan a long cook. Be there for every moment of it.'
export const whatItDoes =
  'Say what you cook and when you slice. Emberslate forecasts the heat, calls cameras and people to each moment, follows the probe on the day, and checks the recipe card against what happened.'
export const yourShoots = 'Shoots'
export const door = 'The door'
export const noShoots = 'No shoot yet. Choose the cut and when you want to slice; the fire time follows.'
export const shootHead = 'shoot'
export const dayHead = 'day'
export const today = 'today'
export const tomorrow = 'tomorrow'
export const yesterday = 'yesterday'
export const inDays = (days: number) => `in ${days} days`
export const daysAgo = (days: number) => `${days} days ago`
export const moreAhead = (n: number) => `${n} more ahead`
export const moreBehind = (n: number) => `${n} earlier`
export const licences = 'What Emberslate is made of, and its licences'
export const howItGoes = 'How a day goes'
export const rehearsalOf = (title: string) =>
  `A rehearsal of “${title}”: invented readings, a whole afternoon in 40 seconds.`
export const tryIt = 'Take part in this rehearsal'
export const orSample = 'Or start from one of these'
export const playedLabel = (title: string) =>
  `Heat line of “${title}”, played: forecast, readings and moments as the day goes on`
export const meat = 'meat'
export const cookerWord = 'cooker'
export const flag = (time: string, moment: string, window: readonly [string, string] | null) =>
  [time, moment, window ? `${window[0]} to ${window[1]}` : ''] as const
export const playButton = { plays: 'Pause', stands: 'Play', over: 'Play the day' }
export const timeOfDay = 'Time of the day played'
export const valueText = (time: string, event: string) => `${time}: ${event}`
export const inFigures = 'The same in figures'
export const momentHead = 'moment'
export const forecastHead = 'this morning’s forecast'
export const happenedHead = 'when it came'
export const about = (time: string, early: string, late: string) =>
  early === late ? time : `about ${time}, ${early} to ${late}`
