import type { Forecast } from '../model/forecast'

/** What the day reads of a cook's forecast: joint moments, and the probe that calls people. */
export type DayForecast = Pick<Forecast, 'members' | 'cook' | 'moments' | 'trace'>
