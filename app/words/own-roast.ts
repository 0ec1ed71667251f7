// cards/own-roast.tsx
export const notLoaded =
  'The forecast did not load. Open this page once more with a network, then it also works without.'
export const yourOwnRoast = 'Your own roast'
export const showMetric = 'Show °C and centimetres'
export const showUs = 'Show °F and inches'
export const ownRoastLead =
  'Say how thick yours is, and the same forecast that this card rests on gives your times. It runs on your device.'
export const needsScript = 'It needs JavaScript, which is switched off here; the table above does not.'
export const thicknessWords = 'Thickness'
export const thicknessWhy = (what: string, bounds: string) =>
  `At the thickest place as it lies, such as "${what}". ${bounds}`
export const weightIfYouKnow = 'Weight, if you know it'
export const weightWhy = (what: string) => `Such as "${what}"; it matters little.`
export const cookerWords = 'Cooker'
export const meatIs = 'The meat is'
export const howDoneWhenSliced = 'How done, when sliced'
export const middleWhenSliced = 'Middle when sliced'
export const suchAs = (what: string) => `Such as "${what}".`
export const servedAtIfYouLike = 'Served at, if you like'
export const serveWhy = 'A time of day such as "19:30".'
export const workingItOut = 'Working it out'
export const workOutMyTimes = 'Work out my times'
export const yourPlan = (what: string) => `Your plan: ${what}`
export const yourTimes = 'Your times'
export const doWords = 'do'
export const whenWords = 'when'
export const howYouKnow = 'how you know'

// cards/own-questions.ts
export const fromTo = (least: string, most: string) => `From ${least} to ${most}.`
