/** Texts that stand on more than one page. */
export const noMeaningHere = 'Not here without a signal. The glossary stands under Help.'
export const putBack = 'Put it back'
export const undo = 'Undo'
export const takenOut = (what: string) => `${what} is taken out.`

export const timesIn = (place: string) => `Times in ${place}`

// ui/archive-link.tsx
export const archive = 'Archive'

// ui/crew-link.tsx
export const crewLinks = 'Crew links'

// ui/cut-face.tsx
export const howToReadFace =
  'Lines join places with one highest temperature; shades follow it and, in red meat, how long it stood. Outline, bone and fat are the typical cut’s, not this one’s.'

// ui/import-button.tsx
export const openShootFileOrArchive = 'Open a shoot file or archive'
export const ofArchiveIsHere = (share: number) => `${share} % of the archive is here.`
export const andMore = (count: number) => `And ${count} more.`
export const takeItInAsCopy = 'Take it in as a copy'

// ui/page-code.tsx
export const codeThatLeads = (leadsTo: string) => `Code that leads to ${leadsTo}`

// ui/safety-ledger.tsx
export const ruleWords = 'rule'
export const asksWords = 'asks'
export const thisPlanGives = 'this plan gives'
export const soItIs = 'so it is'
export const conditionsAndSources = 'Conditions and sources'
export const howToTakeReading = 'How to take the reading that counts'

// ui/send-archive.ts
export const archiveUnanswered = 'The server does not answer. Try again.'

// ui/shoot-head.tsx
export const plan = 'Plan'
export const day = 'Day'
export const calls = 'Calls'
export const set = 'Set'
export const card = 'Card'
export const wrap = 'Wrap'
export const shoots = 'Shoots'
export const allShoots = 'All shoots'
export const shootWords = 'Shoot'
export const rehearseDay = 'Rehearse the day'
export const exportWords = 'Export'

// ui/units-button.tsx
export const showFAndPounds = 'Show °F and pounds'
export const showCAndKilograms = 'Show °C and kilograms'

// no-layout.tsx
export const thereAreShotsAndNo = 'There are shots and no camera. Name one under “The crew” on the Day page.'
export const shotsAndTasksNeedPeople =
  'Shots and tasks need people and there is nobody. Add a person under “The crew” on the Day page.'
export const noLayoutYet = 'No layout yet'
export const putRightOnDay = 'To the Day page'
export const dayCannotBeLaidOut = 'The day cannot be laid out yet.'

// re-planned-line.tsx
export const rePlanned = 'Re-planned at'

// shoots/day-log.ts
export const inventedReadings = 'Invented readings: the rehearsed day, not one that was filmed.'

// shoots/save-line.tsx
export const saved = 'Saved.'
export const saving = 'Saving.'
export const savingInMoment = 'Saving in a moment.'
export const notSavedYet = 'Not saved yet: put right what is marked. Everything typed is kept in this browser.'
export const awaySince = (at: string) =>
  `The server has not answered since ${at}. Everything typed is kept in this browser and saved as soon as it does.`
export const notTaken = (why: string) => `Not saved yet. ${why} Everything typed is kept in this browser.`
export const putBy = 'What you typed is kept aside.'
export const savedElsewhere =
  'This shoot was saved elsewhere meanwhile. What you typed is kept in this browser and not saved yet.'
export const saveMineOver = 'Save mine over it'
export const showTheirs = 'Show theirs'

// ui/send.ts
export const unreadableAnswer =
  'The server’s answer cannot be read here. What you typed is still here: load the page again, it may be of an older version.'
export const unanswered = 'The server does not answer. What you typed stands; try again in a moment.'

// ui/undo-button.tsx
export const undoWaits = 'What was typed last is not saved yet: put right what is marked, or wait for the server.'
export const undoLastChange = 'Undo the last change'

// layout.tsx
export const inOneLine = 'A cook plan becomes camera calls and a recipe card whose numbers were checked.'
export const skipToPage = 'Skip to the page'
export const shotsWent = (n: number) => `${n === 1 ? 'One shot' : `${n} shots`} went with the moment to be caught.`

// ui/drawing.tsx
export const sameInFigures = 'The same in figures'
