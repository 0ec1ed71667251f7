/** The model's public names, in reading order; README.md has it on one page. */
export type { CookPlan, Stage } from './cook'
export type { Forecast, Window } from './forecast'
export { forecastCook } from './forecast-cook'
export { MOMENT_IDS, type MomentId } from './moment-ids'
export { spreadOf, windowOf } from './quantiles'
export { summarise } from './summary'
export { MODEL_VERSION } from './version'
