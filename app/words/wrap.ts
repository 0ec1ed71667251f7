// wrap/against-fact.tsx
export const forecastAgainstFact = 'Forecast against fact'
export const thePlan = 'the plan'
export const boardAt = (board: string) => `the board at ${board}`
export const asItHappened = 'as it happened'
export const momentWords = 'moment'
export const happenedWords = 'happened'
export const against = (board: string) => `against ${board}`
export const againstPlan = 'against the plan'
export const takesWords = 'takes'
export const notSeen = 'not seen'
export const notMarked = 'not marked'
export const minutesBeforeAndAfter = 'Minutes before and after it happened'
export const figuresBehindPicture = 'The figures behind the picture'
export const planEarlyLikelyLate = 'the plan: early · likely · late'
export const atWords = (board: string) => `at ${board}`
export const itsWindow = 'its window'

// wrap/calls-and-people.tsx
export const callsWords = 'Calls'
export const whatCame = 'what came of it'
export const calledAs = (why: string) => `called as ${why}`
export const plannedWords = 'planned'
export const calledWords = 'called'
export const readyWords = 'ready'
export const stoodHead = 'stood'
export const peopleWords = 'People'
export const callsAnswered = 'calls answered'
export const none = 'none'
export const ofWords = (answered: number, calls: number) => `${answered} of ${calls}`
export const lateHead = 'late'
export const stoodBy = 'stood by'
export const mealsWords = 'meals'
export const alertsWords = 'alerts'

// wrap/cooker-learnt.tsx
export const whatThisCookerTaught = (name: string) => `What this cooker taught${name}`
export const nothingNoProbeWasRead = 'Nothing: no probe was read in the meat.'
export const widthOfSliceWindow = 'width of the slice window before lighting, minutes'
export const inventedDayTeachesNothing = 'An invented day teaches nothing that is kept.'
export const afterToday = 'after today'
export const afterCooks = (cooks: string) => `after ${cooks} cooks`
export const noEnd = 'no end'

// wrap/fact-axis.ts
export const before = (min: string) => `${min} before`
export const after = (min: string) => `${min} after`

// wrap/keep-cooker.tsx
export const keptAs = (name: string, cooks: string) => `Kept as “${name}”, from ${cooks}.`
export const forgetThisCooker = 'Forget this cooker'
export const isForgotten = (name: string, cooks: string) => `“${name}” is forgotten, ${cooks} with it.`
export const keepItWhat = 'Keep it: what is this cooker called?'
export const keepItWhy = 'Such as “The garden kettle”. A later plan can then start from it.'
export const keepWhatItTaught = 'Keep what it taught'

// wrap/page.tsx
export const wrap = 'Wrap'
export const theWrap = 'The wrap'
export const howDayWent = 'How the day went.'
export const forEdit = 'For the edit'
export const cardHeldAgainstThisDay = 'The card, held against this day'
export const noDayYet = 'No day to look back on yet.'
export const onceMarked = 'It stands here once moments are marked on the set board.'
export const lookAtRehearsedDay = 'Look at it with the rehearsed day'
export const shootsOwnDay = 'The shoot’s own day'
export const whichForecastOfDay = 'Which forecast of the day'
export const boardBeforePull = (at: string) => `The board at ${at}, so long before the pull:`

// wrap/why-and-next.tsx
export const whyItWent = (name: string) => `Why it went so${name}`
export const whyNotKnown = 'Not known: meat on, or the end of the cook, was not marked.'
export const nextTimeWords = 'Next time'
export const noChange = 'This day’s figures ask for no change.'
