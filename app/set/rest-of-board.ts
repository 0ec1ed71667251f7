/** What the board needs a moment after it opened: every form, and the pages that are turned to (use-rest.ts fetches it). */
export { FoodPage } from './food-page'
export { LinePage } from './line-page'
export { LogPage } from './log-page'
export { OpenSheet } from './sheets'
