/** The checker's own limits; common practice, no source, but where a line says otherwise. */
const MINUTE_MS = 60_000
export const LIMITS = {
  /** Times are given to the minute. */
  graceMs: MINUTE_MS,
  /** In a running day what begins so soon stands. */
  standsMs: 10 * MINUTE_MS,
  firstMealWithinMs: 6 * 60 * MINUTE_MS,
  nextMealWithinMs: 6 * 60 * MINUTE_MS,
  mealMs: 30 * MINUTE_MS,
  /** Rolled before and after what is wanted. */
  handleMs: 10_000,
  /** Longest it takes a called crew to leave what they are doing. */
  releaseMs: 15 * MINUTE_MS,
  hotMs: 10 * MINUTE_MS,
  /** Under its lid or foil. */
  sideHotMs: 20 * MINUTE_MS,
  /** So much before its moment a side may be done, or so much after it go on. */
  sideMs: 10 * MINUTE_MS,
  restedMs: 30 * MINUTE_MS,
  slicedMs: 20 * MINUTE_MS,
  /** How far from a wanted slice time the likely one may fall. */
  sliceMs: 5 * MINUTE_MS,
  /** So long a fire that nobody has put out burns on. */
  burnsOnMs: 15 * MINUTE_MS,
  /** Laid out for 95 %; a fresh ensemble has its own share. */
  readyShare: 0.9,
  /** A fresh ensemble has its own share. */
  chanceGrain: 0.05,
  /** Share of members in which a call may leave too little time. */
  missShare: 0.05,
} as const
