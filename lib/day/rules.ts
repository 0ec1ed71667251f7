/** The scheduler's defaults; common practice, no source, unless a line says otherwise. Minutes. Nothing else reads them. */
export const RULES = {
  /** Longest it takes a called crew to leave what they are doing. */
  releaseMin: 15,
  /** Called from nothing in particular: the walk. */
  walkMin: 2,
  setupMin: 5,
  rollMin: 4,
  beforeMin: 1,
  afterMin: 2,
  /** Rolled before and after what is wanted. */
  handleS: 10,
  /** Between two shots of a chain: no new setup, another frame. */
  reframeMin: 1,
  firstMealWithinMin: 360,
  nextMealWithinMin: 360,
  mealMin: 30,
  /** Nobody wants to eat sooner after the call, or after the meal before. */
  mealNotBeforeMin: 90,
  mealWantedMin: 240,
  strikeMin: 30,
  /** Where the plan names neither a call nor a slice. */
  call: '09:00',
  hotMin: 10,
  /** A side stays hot under its lid or foil, from when it is off. */
  sideHotMin: 20,
  restedMin: 30,
  slicedMin: 20,
  lidOpenMin: 1,
  /** Share of members that a call may leave short of its lead: half of the 2 % that held-out members allow. */
  missShare: 0.01,
  /** By the clock people stand by so much sooner: half the likely time to pull is known to about a minute. */
  clockMarginMin: 3,
  /** Above this share a clash of two moments is told. */
  clashShare: 0.005,
  /** From the call to the first need: parking, a coffee, the kit out of the van. */
  arrivalMin: 15,
  /** Between wrap and the next day's call. */
  turnaroundMin: 660,
  /** What begins within this time is not changed any more. */
  frozenMin: 10,
  /** A call that comes so much sooner or later has moved. */
  movedMin: 5,
  /** A meal may meet a hard hold in so many cooks. */
  mealRisk: 0.05,
} as const

/** What the search pays, in points; a dropped shot costs its weight. */
export const PRICES = {
  weight: { must: 1000, should: 100, could: 30 },
  /** Share of its weight that an interrupted shot loses: it can often be taken up again. */
  interrupted: 0.6,
  lidOpening: 12,
  dayPerMin: 0.12,
  laterMeatOnPerMin: 0.3,
  laterPerMin: 0.002,
  /** Raw meat waits for its fire. */
  rawWaitPerMin: 0.02,
  mealMissing: 2000,
  mealRisk: 60,
  mealApart: 4,
  /** Away from the middle of the time between meals. */
  mealShiftPerMin: 0.01,
  sliceOutOfLight: 400,
  /** The wished slice is given up for a must, and for nothing less. */
  wishMissed: 550,
  overtimePerPersonMin: 0.25,
  /** Who stands at the place already can be called later, and by the probe. */
  newStand: 2,
  /** The cooks are put apart rather than a fire left, but a must is not given up for it. */
  fireLeft: 300,
} as const

/** What a running day pays, in points, for changing what was announced. */
export const STABILITY = {
  movedPerMin: 0.2,
  callMoved: 40,
  personChanged: 4,
  announcedDropped: 20,
} as const
