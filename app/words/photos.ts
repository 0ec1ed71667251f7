// set/photos/continuity.tsx
export const continuity = 'Continuity'
export const continuityLead = 'Notes and photographs by shot, the latest first. Take them on the board: More, Note.'
export const toBoard = 'To the board'
export const stillToShoot = 'Still to shoot'
export const everyShotIsDone = 'Every shot is done.'
export const doneWords = 'Done'
export const nothingNotedOfIt = 'Nothing was noted of a shot that is done.'
export const ofNoShot = 'Of no shot'
export const roastLookedLast = 'Not shot yet. The roast looked like this last:'
export const nothingNotedYet = 'Nothing noted yet.'

// set/photos/photo-field.tsx
export const shrinkingIt = 'Shrinking it.'
export const asItWillBeKept = 'As it will be kept'
export const takeAnother = 'Take another'
export const photographLeftOff = 'The photograph is left off.'
export const photograph = 'Photograph'
export const chooseOne = 'Choose one'
export const withoutIt = 'Without it'

// set/photos/photo.tsx
export const photographIsStillOnPhone = 'The photograph is still on the phone that took it.'
export const enlarge = (words: string) => `Enlarge: ${words}`
export const notTakenByServerKept = 'not taken by the server, kept here'
export const waitsHere = 'waits here'
export const waitsOnThisPageOnly = 'waits, on this page only'
export const back = 'Back'
