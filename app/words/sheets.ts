// set/camera-clock-sheet.tsx
export const cameraClockLogged = (camera: string) => `Camera ${camera}’s clock is logged.`
export const cameraClock = 'Camera clock'
export const timecodeItIsAbout = 'Timecode it is about to show'
export const itShowsItNow = 'It shows it now'

// set/correct-sheet.tsx
export const correct = 'Correct'
export const itRead = (units: string) => `It read, ${units}`
export const itWas = 'It was at'
export const writeTimeSuch = 'Write a time such as “18:05”.'
export const whyWords = 'Why'
export const putRight = 'Put right'
export const isPutRight = 'Put right.'
export const itDidNotHappen = 'It did not happen'
export const takenBack = 'Taken back.'
export const writeNumberSuch = 'Write a number such as “46.5”.'

// set/expected-read.ts
export const forecastExpects = (temp: string) => `The forecast expects ${temp}.`
export const forecastExpectsTo = (low: string, high: string) => `The forecast expects ${low} to ${high}.`

// set/fire-sheet.tsx
export const lidOpen = 'Lid open'
export const lidShut = 'Lid shut'
export const ventsOpen = 'Vents open'
export const ventsShut = 'Vents shut'
export const logged = (what: string) => `Logged: ${what}.`
export const theFire = 'The fire'
export const fuelPut = (unit: string) => `Fuel put on, ${unit}, if it was weighed`
export const writeWeightInSuch = (unit: string) => `Write a weight in ${unit}, such as “0.4”.`
export const fireFed = 'Fire fed'

// set/food-page.tsx
export const foodWords = 'Food'
export const theFood = 'The food'
export const foodLead =
  'It counts from the first slice, or from when somebody says that it stands out. Ask the local food-safety authority, whose rules go first.'
export const foodOutBackServed = 'Food out, back, served'
export const sinceWords = (since: string) => ` since ${since}`
export const throwItAwayNow = 'Throw it away now.'
export const throwItAway = (discardAt: string, left: string) => `Throw it away at ${discardAt}, in ${left}.`
export const limitWords = 'Limit'
export const outWords = (limit: string, air: string) => `${limit} out (${air})`
export const tastingHead = 'Tasting'
export const whoseRule = 'Whose rule'
export const usdaFsis = 'USDA FSIS'
export const noItWasThrownAway = 'No: it was thrown away.'
export const noItHasStoodOut = 'No: it has stood out too long.'
export const notYet = 'Not yet.'
export const notSaidByPlan = 'Not said by the plan.'
export const allowedWords = 'Allowed.'
export const withCare = 'With care.'

// set/food-sheet.tsx
export const standsOut = 'Stands out'
export const backHotOrCold = 'Back, hot or cold'
export const served = 'Served'
export const thrownAway = 'Thrown away'
export const loggedFood = (food: string, is: string) => `Logged: ${food}, ${is}.`

// set/hold-sheet.tsx
export const inCooker = 'In the cooker'
export const inOven = 'In the oven'
export const inBox = 'In the box'
export const heldEnds = 'Held: ends'
export const holdStarts = 'Hold starts'
export const holdEnds = 'Hold ends'
export const loggedHoldEnds = 'Logged: the hold ends.'
export const loggedHeld = (where: string) => `Logged: held ${where}.`

// set/keypad.tsx
export const wipe = 'wipe'

// set/late-sheet.tsx
export const wholeCrew = 'The whole crew'
export const toldLateByMin = (name: string, min: number) => `Told: ${name} late by ${min} min.`
export const lateBy = 'Late by'
export const minWords = (min: number) => `${min} min`

// set/log-page.tsx
export const theLog = 'The log'
export const nothingIsLoggedYet = 'Nothing is logged yet.'
export const earlierLines = 'Earlier lines ('
export const countsAgain = 'It counts again.'
export const takenBackTag = ', taken back'
export const putRightTag = ', put right'
export const waitsHere = ', waits here'
export const correctWords = 'Correct'
export const correctLine = (words: string) => `Correct: ${words}`

// set/mark-sheet.tsx
export const marked = (name: string) => `Marked: ${name}.`
export const itHasHappened = 'It has happened'
export const everyMomentIsMarked = 'Every moment is marked.'

// set/meal-sheet.tsx
export const loggedMeal = (what: string) => `Logged: the meal ${what}.`
export const meal = 'Meal'
export const mealBegins = 'Meal begins'
export const mealEnds = 'Meal ends'

// set/more-sheet.tsx
export const probe = 'Probe'
export const hold = 'Hold'
export const note = 'Note'
export const soundCheck = 'Sound check'
export const fire = 'Fire'
export const more = 'More'
export const rehearseThisDay = 'Rehearse this day: an invented one is played, and nothing is sent'
export const toContinuity = 'Continuity: how each shot looked, with photographs'

// set/note-sheet.tsx
export const writeNoteFirst = 'Write the note first, or take a photograph.'
export const noteKept = 'Note kept.'
export const thisPhoneCouldNotKeep =
  'This phone could not keep the photograph: it may be full. Save the note without it.'
export const whatToRemember = 'What to remember'
export const keepsNoPhotographs = 'This browser keeps no photographs: leave this page open until yours is sent.'
export const roast = 'Roast'
export const none = 'none'
export const stateWords = 'State'
export const notSaid = 'not said'
export const saveWords = 'Save'

// set/probe-sheet.tsx
export const probeIn = 'Probe in'
export const moved = 'Moved'
export const pulledOut = 'Pulled out'
export const readsWrong = 'Reads wrong'
export const rightAgain = 'Right again'
export const checked = 'Checked'
export const loggedProbe = (sensor: string, what: string) => `Logged: ${sensor}, ${what}.`
export const probeWords = 'Probe'

// set/reading-sheet.tsx
export const typeWhatProbeReads = 'Type what the probe reads.'
export const loggedReading = (sensor: string, shown: string) => `Logged: ${sensor} ${shown}.`
export const reading = 'Reading'
export const movedOutWrong = 'Moved, out, wrong'
export const lastWas = 'Last was'
export const nothingReadHereYet = 'Nothing read here yet. '
export const itIsRight = 'it is right'
export const saveKey = 'save'

// set/shot-picker.tsx
export const shotWords = 'Shot'

// set/shot-sheet.tsx
export const shotDone = 'Shot done'
export const dropped = 'Dropped'
export const missed = 'Missed'
export const stillToDo = 'Still to do'
export const chooseShotFirst = 'Choose the shot first.'
export const sayInFewWordsWhy = 'Say in a few words why it is dropped.'
export const theShot = 'The shot'
export const whyIf = 'Why, if it is not done'

// set/sound-sheet.tsx

// set/take-sheet.tsx
export const good = 'Good'
export const noGood = 'No good'
export const rollingSince = (since: string) => `Rolling since ${since}`
export const takeWords = 'Take'
export const slateWords = 'Slate'
export const oneLess = 'one less'
export const takeNumber = 'take number'
export const oneMore = 'one more'
export const timecodeWords = 'Timecode'
export const fromClockWords = 'From the clock'
export const noteWords = 'Note'
export const rollWords = 'Roll'
export const cameraRolls = (camera: string) => `Camera ${camera} rolls.`
export const cutAndItWas = 'Cut, and it was'
export const wholeTakeAfterwards = 'Or the whole take, told afterwards'
export const takeCut = (take: number, verdict: string) => `Take ${take}: ${verdict}.`

// set/typed-timecode.ts
export const writeHoursMinutesSeconds = 'Write hours, minutes, seconds and frames: “16:05:12:10”, or the digits alone.'

// set/typed-temp.ts
export const noProbeReads = (temp: string, least: string, most: string) =>
  `No probe reads ${temp}. Type one from ${least} to ${most}.`
