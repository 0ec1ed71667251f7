/** Texts of the Day page. */

export const theDayOf = (title: string) => `The day: ${title}`

// day/backward-curve.tsx
export const dayIsLaidOut = (share: string) => `The day is laid out for ${share} of cooks.`
export const howEarly = 'How early'
export const howEarlyToBeSliced = (wanted: string) => `How early, to be sliced ${wanted}`
export const isChosen = (share: string) => `${share} is chosen`
export const layOut = (share: string) => `Lay out for ${share}`
export const curveInFigures = 'The curve in figures'
export const meatOn = 'meat on'
export const sliced = (wanted: string) => `sliced ${wanted}`
export const mustRestHead = 'of these must rest on for it'
export const chanceCurve = (wanted: string) =>
  `Chance that the roast is sliced ${wanted} against the time its meat goes on`
export const plannedWords = (clock: string, chance: string) => `planned ${clock}, ${chance}`

// day/crew.tsx
export const theCrew = 'The crew'
export const addPersonWords = 'Add a person'
export const personIsAdded = 'A person is added.'
export const takeOut = 'Take out'

// day/day-desk.tsx
export const shotIsAdded = 'A shot is added.'
export const shotsWords = 'Shots'
export const addShotWords = 'Add a shot'
export const howToPin =
  'A bar at the left edge marks a shot that happens once, when the meat says. Drag any other along its line, or its box under the heat line, to pin it to a minute; drag one of these to wish the whole cook sooner or later.'
export const daysHours = 'The day’s hours'
export const tryingOut = 'Trying out.'
export const firstLookAtDay = 'A first look at the day with this change.'
export const dayWithThisChange = 'The day with this change.'

// day/day-view.ts
export const fromToWho = (from: string, to: string, who: string) => `${from} to ${to}, ${who}`

// day/does-not-fit.tsx
export const doesNotFit = 'Does not fit'
export const everythingFits = 'Everything fits'
export const doSo = 'Do so'
export const holdsWords = 'Holds'
export const notByOneCamera = 'Two moments, one camera'

// day/lane-grips.tsx
export const untitledShot = 'Untitled shot'
export const onHeatLine = (title: string) => `On the heat line: ${title}`
export const spokenTimes = (from: string, to: string, pinned: string, tried: string) =>
  `${from} to ${to}${pinned}${tried}`

// day/offered-shots.tsx
export const offeredShotsTitle = 'Shots that are often missed on a long cook'

// day/offers.tsx
export const moreOnOffer = (count: number) => `${count} more on offer`
export const take = 'Take'
export const takeWords = (title: string) => `Take ${title}`
export const leave = 'Leave'
export const leaveWords = (title: string) => `Leave ${title}`

// day/page.tsx
export const day = 'Day'

// day/shot-cells.ts
export const titleOfShot = (index: number) => `Title of shot ${index}`
export const whenOf = (name: string) => `When of ${name}`
export const placeOf = (name: string) => `Place of ${name}`
export const peopleOf = (name: string) => `People of ${name}`
export const setupOf = (name: string) => `Setup of ${name}`
export const rollOf = (name: string) => `Roll of ${name}`
export const priorityOf = (name: string) => `Priority of ${name}`
export const foodOf = (name: string) => `Food of ${name}`

// day/shot-fields.ts
export const when = 'When'
export const momentWords = 'Moment'
export const rollBefore = 'Roll before it'
export const holdAfter = 'Hold after it'
export const lengthWords = 'Length'
export const notBefore = 'Not before'
export const notAfter = 'Not after'
export const fromWords = 'From'
export const toWords = 'To'
export const lightWords = 'Light'
export const pinnedAt = 'Pinned at'
export const pinnedWhy = 'It then rolls from this minute on: 18:05. Empty: when it suits.'
export const roast = 'Roast'
export const shotWords = 'Shot'
export const setupWords = 'Setup'
export const needsWords = 'Needs'
export const needsWhy = 'Roles or people, with commas: camera, presenter.'
export const camera = 'Camera'
export const place = 'Place'
export const lid = 'Lid'
export const food = 'Food'
export const ifSomethingMustGive = 'If something must give'
export const newShot = 'New shot'
export const camerasWords = 'Cameras'
export const camerasWhy = 'With commas: A, B.'
export const personWords = (i: number) => `Person ${i}`
export const rolesOf = (id: string) => `Roles of ${id}`
export const rolesWhy = 'With commas: camera, sound.'

// day/shot-filter.tsx
export const whoseShots = 'Whose shots'
export const shotsWhere = 'Shots where'
export const shotsOfWhichRoast = 'Shots of which roast'
export const show = 'Show'
export const shots = (all: number) => `${all} shots`
export const ofShots = (shown: number, all: number) => `${shown} of ${all} shots`

// day/shot-more.tsx
export const letGoOfItsTime = 'Let go of its time'
export const splitInTwo = 'Split in two'
export const duplicate = 'Duplicate'
export const takeThisShotOut = 'Take this shot out'

// day/shot-move.ts
export const firstSliceIsWished = (at: string) => `The first slice is wished at ${at}.`

// day/shot-row.tsx
export const ofWords = (what: string, title: string) => `${what} of ${title}`
export const less = 'Less'
export const more = 'More'

// day/shot-table.tsx
export const howToPinByKeys =
  'Arrow keys try another minute, with shift five. Enter pins the shot there, Escape lets it go.'
export const howToMoveCookByKeys =
  'Arrow keys move the whole cook by a minute, with shift by five. Enter wishes the first slice there, Escape lets it go.'
export const no = 'no.'
export const shotHead = 'shot'
export const whenItFalls = 'when it falls'

// day/shot-track.tsx
export const doesNotFitWords = 'does not fit'
export const pinnedWords = 'pinned'
export const timeOf = (title: string) => `Time of ${title}`

// day/side-fields.ts
export const side = 'Side'
export const takes = 'Takes'
export const sideTakesWhy = 'Your own figure: the forecast knows the roast alone.'
export const heat = 'Heat'
export const sideHeatWhy = 'What this time is meant at, as 160 °C. The plan says if the cooker is far off it.'
export const hands = 'Hands'
export const sideHandsWhy = 'A role or person to put it on and take it off. Empty: a cook.'

// day/sides.tsx
export const sidesOnSameCooker = 'Sides on the same cooker'
export const sidesCounted = (count: number) => `Sides on the same cooker: ${count}`
export const sideWords = (index: number) => `Side ${index}`
export const thisSide = 'this side'
export const out = 'out'
export const addSideWords = 'Add a side'
export const sideIsAdded = 'A side is added.'
export const onOff = (onto: string, from: string) => `On ${onto}; off ${from}`

// day/task-fields.ts
export const titleOfTask = (index: number) => `Title of task ${index}`
export const startOf = (name: string) => `Start of ${name}`
export const lengthOf = (name: string) => `Length of ${name}`
export const intervalOf = (name: string) => `Interval of ${name}`
export const taskFromWhy = 'A moment such as “meat on”, or a time such as 18:30.'
export const takesWords = 'Takes'
export const taskTakesWhy = 'So long, once in between: 10 min. Empty: the whole time from one to the other.'
export const everyWords = 'Every'
export const taskEveryWhy = 'Again and again, so far apart: 45 min. Empty: once.'
export const taskNeedsWhy = 'Roles or people, with commas: cook, camera.'
export const taskDelayWhy = 'So long after “from”: 30 min. Empty: at once.'
export const taskLidWhy = 'With the lid off the cook loses heat; the forecast then knows of it.'

// day/task-row.tsx
export const takeThisTaskOut = 'Take this task out'

// day/tasks.tsx
export const taskIsAdded = 'A task is added.'
export const tasksWords = 'Tasks'
export const addTaskWords = 'Add a task'
export const noShots = 'No shot yet. Add the first, such as the first slice.'
export const noTasks = 'Nothing is asked of anybody beside the shots.'
export const taskWords = 'task'
export const offeredTasksTitle = 'Tasks that fire, cameras and sound ask for'

// day/what-if.tsx
export const whatIfSummary = 'What if the crew is late, the weather turns, the roast is held'
export const dayHasChanged = 'The day has changed since: ask again.'
export const adopt = 'Adopt'
export const leaveIt = 'Leave it'

// day/shot-row.tsx
export const lessWords = 'Less'
export const moreWords = 'More'

// day/task-row.tsx

// day/does-not-fit.tsx, shot-more.tsx, task-fields.ts
export const doSoWay = (way: string) => `Do so: ${way}`
export const doneWay = (way: string) => `Done: ${way}`
export const isFreeAgain = (title: string) => `${title} is free again.`
export const isPinnedAt = (title: string, clock: string) => `${title} is pinned at ${clock}.`
export const pinAt = (clock: string) => `Pin at ${clock}`
export const endOf = (name: string) => `End of ${name}`
