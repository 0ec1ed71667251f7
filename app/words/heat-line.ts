// ui/heat-line-figure.tsx, ui/heat-line-hand.tsx
export const timeOnHeatLine = 'Time on the heat line'
export const readAnyMinute = 'Read any minute'
export const pointOrPress = 'Point at the picture, or press an arrow key, to read any minute.'
export const earlierMoment = 'Earlier moment'
export const laterMoment = 'Later moment'
export const closer = 'Closer'
export const wholeDay = 'Whole day'
/** Read aloud with the time slider. */
export const keysOfHeatLine =
  'Arrow keys move by minutes, with Shift further; Page Up and Page Down go from moment to moment; plus looks closer, minus shows the whole day.'
export const shownFrom = (from: string, to: string) => `The picture shows ${from} to ${to}.`
export const wholeDayShown = 'The picture shows the whole day.'

// set/live-line.tsx, set/line-page.tsx
export const noMomentKnownYet = 'No moment of this roast is known yet.'
export const theHeatLine = 'The heat line'
