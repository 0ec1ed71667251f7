/** Pages that stand in for one that does not come. */

export const product = 'Emberslate'
export const notTogether = 'This page did not come together.'
export const broken = 'What was saved is safe. Try once more; if it stays so, the server’s window says why.'
export const away =
  'The database does not answer at present. What was saved is safe, and this page tries again by itself.'
export const numbered = (digest: string) => `There it has the number ${digest}.`
export const tryAgain = 'Try again'
export const allShoots = 'See the shoots that are here'

export const otherVersion = 'This shoot was saved by another version of Emberslate.'
export const notKnownHere =
  'It has something that this version does not know, and so cannot be shown here. Nothing of it is lost: start the newer version, or take its file there.'
export const takeItsFile = 'Take its file'

export const nothingHere = 'Not here'
export const notHere = 'There is no such shoot or page here.'
export const maybeElsewhere =
  'It may be on another computer: export it there, and open its file here. Or its address was not copied whole.'
