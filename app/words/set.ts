// set/board.tsx
export const nobodyYet = 'nobody yet'
export const dayBlackOnWhite = 'day: black on white'
export const duskWhiteOnBlack = 'dusk: white on black'
export const day = 'day'
export const duskWords = 'dusk'
export const board = 'Board'
export const notHereYet = 'Not here yet'
export const thisPartOfBoard = 'This part of the board is on its way to this phone. It needs the network once.'

// set/alert-band.tsx
export const toYou = 'to you'
export const toAndToYou = (owner: string) => `to ${owner}, and to you`
export const takeRollsSilent = 'a take rolls: silent'
export const itWasDue = (deadline: string) => `it was due at ${deadline}`
export const byIn = (deadline: string) => `by ${deadline}, in`
export const unansweredGoesOn = 'Unanswered, it goes to somebody else.'
export const seesTo = (owner: string) => `${owner} sees to it that it is done.`

// set/calls-page.tsx
export const myCalls = 'My calls'
export const nothingIsPlannedForYou = 'Nothing is planned for you.'
export const overWords = 'Over'
export const about = (name: string, likely: string) => `${name} about ${likely}`

// set/link-line.tsx
export const rehearsalWords = 'rehearsal'
export const serverDidNotTakeEntry = (sentence: string) =>
  `The server did not take an entry: ${sentence} It is kept here.`
export const noSignalSince = (at: string) => `No signal since ${at}.`
export const alertsGo = (waiting: string) => `Alerts go on from this phone. ${waiting}`
export const waits = 'waits'
export const wait = 'wait'
export const hereNoneLost = 'here, none lost.'
export const forecastIsThisPhonesOwn = ' The forecast is this phone’s own.'
export const catchingUp = 'Catching up.'
export const onWay = (waiting: string) => `${waiting} on the way.`
export const logIsBeingRead = 'The log is being read.'
export const nothingGoesOut = 'Nothing goes out.'
export const whatIsLoggedGoesOut = 'What is logged goes out by itself, and alerts go on.'
export const keptHereNoneLost = (waiting: string) => `${waiting} kept here, none lost.`
export const makeThisPhoneTrustSet = 'Make this phone trust the set'
export const seenWords = 'Seen'

// set/next-page.tsx
export const nowWords = 'Now'
export const nothingMoreForYouToday = 'Nothing more for you today'
export const logAndReadingsGo = 'The log and the readings go on here.'
export const to = (early: string, late: string) => `${early} to ${late}`
export const thenNext = 'Then'
export const cameraWords = (camera: string) => `camera ${camera}`
export const toWords = 'to'
export const allWhile = 'all the while'

// set/set-context.tsx
export const notKept = 'Not kept: this phone could not store it. Try again, or write it down.'

// set/sheet.tsx
export const backWords = 'Back'

// set/who-am-i.tsx
export const whoAreYou = 'Who are you?'
export const nobodyInShoot = 'Nobody is in this shoot yet.'
export const putCrewIn = 'Put the crew in on the Day page'
export const thisPhoneRemembers = 'This phone remembers it, and shows your calls.'

// set/answers.tsx
export const youSaidComing = 'You said: coming.'
export const youSaidReady = 'You said: ready.'
export const youSaidCannot = 'You said: cannot. Somebody else is looked for.'
export const youHandedItOver = 'You handed it over.'
export const toldWords = (word: string) => `Told: ${word}.`
export const comingWords = 'Coming'
export const readyWords = 'Ready'
export const cannotWords = 'Cannot'
export const cameraRolls = (camera: string) => `Camera ${camera} rolls.`
export const rollingWords = 'Rolling'
export const shotDone = 'Shot done'
export const doneWords = (title: string) => `Done: ${title}.`
export const cutGood = 'Cut, good'
export const cutNoGood = 'Cut, no good'
export const cutHold = 'Cut, hold'
export const good = 'good'
export const noGood = 'no good'
export const hold = 'hold'
export const takeWords = (take: number, verdict: string) => `Take ${take}: ${verdict}.`

// set/food-line.tsx
export const hasStoodOutTooLong = 'has stood out too long: throw it away.'
export const standsOutUntilAtLatest = (discardAt: string, left: string) =>
  `stands out, until ${discardAt} at the latest (${left}).`

// set/wait-line.tsx
export const fromNow = (late: string) => `from now to ${late}`
export const nowInLine = 'now'

// set/live-set.tsx
export const openingBoard = 'Opening the board. The day is here; the rest of the board is on its way to this phone.'
export const openingDesk = 'Opening. The day is here; the rest of the page is on its way.'
export const stillNotOpen = 'Still not open after ten seconds. Is this phone on the set’s network? It opens by itself.'
export const loadItAgain = 'Load it again'

// set/facts-of.ts
export const usdaFsisNoTable = (authority: string) =>
  `USDA FSIS: no table is held for ${authority}, ask the local authority`
export const keepsMinimum = (asks: string) => `The plan keeps the food-safety authority’s minimum (${asks}).`
export const belowMinimum = (asks: string) =>
  `The plan stays below the food-safety authority’s minimum (${asks}). Not for guests at risk.`

// set/page.tsx
export const set = 'Set'

// read-only.tsx
export const onlyReading = 'You read this; the producer changes it.'
export const whatYouMayDo = 'What you may do'

// set/continuity/page.tsx
export const continuity = 'Continuity'

// set/presenter/page.tsx
export const presentersLine = 'Presenter’s line'

// set/desk/page.tsx
export const setOnLaptop = 'Set, on the laptop'
export const theSet = (title: string) => `The set: ${title}`

// set/readings/page.tsx
export const readings = 'Readings'

// set/rehearsal/page.tsx
export const rehearsal = 'Rehearsal'

// set/board.tsx: the pages
export const pageNow = 'Now'
export const pageCalls = 'Calls'
export const pageLine = 'Line'
export const pageFood = 'Food'
export const pageLog = 'Log'
