// set/feed/sound-check.tsx
export const soundCheckHeardAllThree = 'Sound check: heard all three tones.'
export const soundCheckDidNotHear = 'Sound check: did not hear the tones.'
export const soundCheck = 'Sound check'
export const heardAllThree = 'Heard all three'
export const notHeard = 'Not heard'
export const playThreeTones = 'Play the three tones'
export const playThemAgain = 'Play them again'
export const hearThreeTonesOnceBefore = 'Hear the three tones once before the first call, with the volume up.'
export const didYouHearAllThree = 'Did you hear all three?'
export const heardItStandsInLog = 'Heard. It stands in the log.'
export const turnVolumeUpAndSilent = 'Turn the volume up and silent mode off, then play them again.'
export const thisPhoneCouldNotStore =
  'This phone could not store your answer. It may be full: make room, then play them again.'
export const thisBrowserLetsNoSound =
  'This browser lets no sound out. Alerts show on the screen, and the phone shakes where it can.'
export const takeRollsNoSoundNow = 'A take rolls: no sound now. Try after it.'
