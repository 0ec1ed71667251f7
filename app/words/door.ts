// door/door-head.tsx
export const shoots = 'Shoots'
export const allShoots = 'All shoots'

// door/page.tsx
export const theDoor = 'The door'
export const thisComputerOnly = 'Only this computer opens Emberslate.'
export const closedLead = 'Nobody signs in. To let the crew in by their phones, stop it and start it anew with:'
export const npmStartCrew = 'npm start -- --crew'
export const chooseOwnersPassphrase = 'Choose the owner’s passphrase.'
export const passphraseLead =
  'It opens everything here. You type it on this computer, and on another only if you want to work there. The crew never needs it: they get codes.'
export const chooseIt = 'Choose it'
export const passphrase = 'Passphrase'
export const firstPassphraseWhy = (shortest: number) =>
  `At least ${shortest} characters; four or five words that you remember are good.`
export const nobodyHasKey = 'Nobody has a key to this door yet.'
export const noKeyLead =
  'The owner chooses a passphrase first, at the computer that Emberslate runs on: open http://127.0.0.1 there, with the port that it printed.'
export const whoIsThere = 'Who is there?'
export const crewLead =
  'Crew: scan your code with the camera, or open your link again. It is on this set’s network only.'
export const theOwner = 'The owner'
export const signIn = 'Sign in'
export const beyondLink = 'Your link does not reach so far.'
export const youAreIn = 'You are in.'
export const askProducer = 'Ask the producer to do it, or for another link.'
export const asOwnerOnThisDevice = 'As the owner, on this device.'
export const makeThisPhoneTrustSet = 'Make this phone trust the set'
export const chooseAnotherPassphrase = 'Choose another passphrase'
export const oneThatHolds = 'The one that holds'
export const newOne = 'The new one'
export const nextPassphraseWhy = (shortest: number) =>
  `At least ${shortest} characters. Every other device of the owner has to sign in again.`
export const asWords = 'as'

// door/passphrase-form.tsx
export const hide = 'Hide'
export const show = 'Show'

// door/sign-out-button.tsx
export const stillSignedIn = 'You are still signed in: the server did not take it. Try again where it answers.'
export const keptNotCleared =
  'What this device kept could not be cleared. Clear this site’s data in the browser’s settings:'
export const signOutOnThisDevice = 'Sign out on this device'

// join/join-by-code.tsx
export const setDidNotOpen = 'The set did not open.'
export const openingSet = 'Opening the set.'
export const codeIsBeingChecked = 'The code is being checked.'
export const tryAgain = 'Try again'

// join/page.tsx
export const comeIn = 'Come in'
export const needsScripts = 'This page needs scripts. Switch them on in the browser, then open your link again.'
