// set/desk.tsx
export const rehearsalWords = 'rehearsal'
export const noLiveForecastYetTimes = 'No live forecast yet: the times are this morning’s.'
export const blackOnWhite = 'Black on white'
export const whiteOnBlack = 'White on black'
export const calls = 'Calls'
export const noCalls = 'Nothing is called: the day has no shots.'
export const from = 'from'
export const what = 'what'
export const stateWords = 'state'
export const momentWords = 'moment'
export const who = 'who'

// set/desk-state.tsx
export const alertsWords = 'Alerts'
export const noneIsOpen = 'None is open.'
export const by = (owner: string, deadline: string, left: string) => `${owner}, by ${deadline} (${left}),`
export const acknowledged = 'acknowledged'
export const notAnsweredYet = 'not answered yet'
export const askedBefore = (names: string) => `; asked before: ${names}`
export const byWords = (cook: string, deadline: string) => `${cook}, by ${deadline}`
export const probesWords = 'Probes'
export const probesAndCooker = 'Probes and cooker'
export const nothingHasBeenReadYet = 'Nothing has been read yet.'
export const readsWrong = 'reads wrong'
export const outOfMeat = 'out of the meat'
export const foodWords = 'Food'
export const sinceWords = (since: string) => ` since ${since}`
export const throwItAwayNow = 'throw it away now'
export const untilAtLatest = (discardAt: string) => `until ${discardAt} at the latest`

// set/moves.tsx
export const doItAndSend = 'Do it, and send'
export const sendWords = 'Send'
export const doIt = 'Do it'
export const leaveIt = 'Leave it as it is'
export const whatWouldMove = 'What would move'
export const was = 'was'
export const wouldBe = 'would be'
export const movesWords = 'moves'
export const whoMustKnow = 'who must know'
export const dropped = 'dropped'
export const newWords = 'new'
export const byItsMoment = ', by its moment'

// set/re-plan.tsx
export const rePlan = 'Re-plan'
export const restOfDay = 'The rest of the day'
export const layingOutRestOfDay = 'Laying out the rest of the day'
export const rePlanFromNow = 'Re-plan from now'
export const nothingNeedsToMove = 'Nothing needs to move.'
export const sentToCrew = 'Sent to the crew.'
export const droppedWords = (title: string) => `Dropped: ${title}.`
export const backInDay = (title: string) => `Back in the day: ${title}.`

// set/what-ifs.tsx
export const whatIf = 'What if'
export const showWhatItWouldDo = 'Show what it would do'

// set/live-desk.tsx
export const readingsFromFileOrDevice = 'Readings from a file or a device'
export const continuity = 'Continuity'

// set/presenter.tsx
export const presentersLine = 'Presenter’s line'
export const comesAt = (likely: string, early: string, late: string) =>
  early === late ? `at ${likely}` : `about ${likely}, ${early} to ${late}`
export const nothingMoreToday = 'Nothing more today'
export const inWords = (name: string) => `${name} in`

// set/re-plan-worker.ts
export const shootDoesNotRead = 'The saved plan cannot be read. Open its Plan page: what is wrong is marked there.'

// set/use-re-plan.ts
export const rePlanBrokeOffDay = 'The re-plan broke off. The day stands as it was announced; press once more.'

// set/hand-over.tsx
export const toldYouCannot = 'Told: you cannot.'
export const handedOver = (name: string) => `Handed over to ${name}.`
export const youCannotWhoGoes = 'You cannot. Who goes?'
export const nobodyIKnow = 'Nobody I know of'
export const handedOverTo = (to: string) => `Handed over to ${to}.`
export const handOver = 'Hand over to'
