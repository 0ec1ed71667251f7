// set/rehearsal/rehearsal-bar.tsx
export const workingOutForecast = 'Working out the forecast.'
export const itAsksYou = 'It asks you: at 1× until you answer, or somebody does for you.'
export const paused = 'Paused. What you add stays on this screen.'
export const dayIsOver = 'The day is over.'
export const inventedReadings = 'Rehearsed day, with invented readings. What you add stays on this screen.'
export const dayAsItWasLogged = 'The day as it was logged. What you add stays on this screen.'
export const rehearsal = 'Rehearsal'
export const play = 'Play'
export const pauseWords = 'Pause'
export const speedWords = 'Speed'
export const asWhom = 'As whom'
export const asNobody = 'as nobody'
export const asWords = (name: string) => `as ${name}`
export const jumpTo = 'Jump to'
export const startAgain = (opensAt: string) => `Start again, ${opensAt}`
export const firstEntry = (begins: string) => `The first entry, ${begins}`
export const minBefore = (cook: string, at: string) => `10 min before ${cook}, ${at}`
export const loggedDay = 'Logged day'
export const rehearsedDay = 'Rehearsed day'
export const phone = 'Phone'
export const laptop = 'Laptop'
export const leave = 'Leave'

// set/rehearsal/rehearsal-here.tsx
export const thereIsNoDay = 'There is no day to play: no cook of this plan ever comes to its slice.'
export const rehearsalWords = (title: string) => `Rehearsal: ${title}`

// set/rehearsal/rehearsal-screen.tsx
export const openingRehearsal = 'Opening the rehearsal.'
