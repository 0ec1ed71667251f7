/**
 * Where everything lies in the kernel's memory: one truth for both sides, so plain numbers only (AssemblyScript reads this
 * file too). A row holds one number for each lane; a lane is one member's roast. Two vectors of four march side by side.
 */
export const LANES = 8
/** Bytes of a row of f32 or i32, and of a row of f64. */
export const ROW = 32
export const WIDE = 64

/** What all lanes share: f32, one each. */
const SHARED_AT = 1024
export const GAMMA = SHARED_AT
export const JUICE_RATE_PS = SHARED_AT + 4
export const CAPACITY_PER_JUICE = SHARED_AT + 8
export const CAPACITY_FLOOR = SHARED_AT + 12
export const HELD_MORE = SHARED_AT + 16
export const LATENT_JPKG = SHARED_AT + 20
export const TABLE_FROM_C = SHARED_AT + 24
export const TABLE_LAST = SHARED_AT + 28
export const PRESSURE_PA = SHARED_AT + 32
export const TANGENT_C = SHARED_AT + 36
export const TANGENT_SLOPE_PK = SHARED_AT + 40
export const BOILING_C = SHARED_AT + 44
/** Saturation is 2^(A - B/(C + T)); the last is the slope of its natural logarithm, times (C + T)². */
export const SATURATION_A = SHARED_AT + 48
export const SATURATION_B = SHARED_AT + 52
export const SATURATION_C = SHARED_AT + 56
export const SATURATION_SLOPE = SHARED_AT + 60
export const KELVIN = SHARED_AT + 64
/** 1, and 2^23, above which an f32 holds whole numbers in its low bits. */
export const ONE = SHARED_AT + 68
export const WHOLE = SHARED_AT + 72
export const CONDUCTION_PER_JUICE = SHARED_AT + 76
export const RHO_KGPM3 = SHARED_AT + 80
/** f64: the skin's error that a step may have, the step taken all the same, when steps double, how often it is sampled. */
export const SKIN_ERROR_K = SHARED_AT + 128
export const LEAST_STEP_S = SHARED_AT + 136
export const SLOW_AFTER_S = SHARED_AT + 144
export const SAMPLE_S = SHARED_AT + 152
/** i32: nodes of a column. */
export const COUNT = SHARED_AT + 160
/** i32: steps taken by all lanes since the memory was made, for the bench. */
export const TAKEN = SHARED_AT + 164

/** Rows of f32: the member. */
const MEMBER_AT = 2048
export const K_FACTOR = MEMBER_AT
export const C_FACTOR = MEMBER_AT + ROW
export const RADIANCE = MEMBER_AT + 2 * ROW
/** What each kg/m² dried out holds back of heat and of vapour, and 1 over all that can dry out, m²/kg. */
export const CRUST_HEAT = MEMBER_AT + 3 * ROW
export const CRUST_VAPOUR = MEMBER_AT + 4 * ROW
export const PER_DRYABLE = MEMBER_AT + 5 * ROW
/** Of what is let go, the share that feeds the skin; over the yield of the cut. */
export const FEED = MEMBER_AT + 6 * ROW
export const JUICE_FACTOR = MEMBER_AT + 7 * ROW
/** The stage: convection, what its film holds back of vapour, 1 or 0 where sealed, and the deficit of the air about, Pa. */
export const H_WPM2K = MEMBER_AT + 8 * ROW
export const FILM_HOLDS = MEMBER_AT + 9 * ROW
export const OPEN = MEMBER_AT + 10 * ROW
export const DEFICIT_PA = MEMBER_AT + 11 * ROW
/** The column's budget of water so far, kg/m²: dried out, lost in all, boiled off in this step; what is let go each s. */
export const DRY = MEMBER_AT + 12 * ROW
export const LOST = MEMBER_AT + 13 * ROW
export const BOILED = MEMBER_AT + 14 * ROW
export const LET_GO_RATE = MEMBER_AT + 15 * ROW
export const LAST_STEP_S = MEMBER_AT + 16 * ROW
/** The try. Its step is on the meat's own clock. */
export const STEP_S = MEMBER_AT + 17 * ROW
export const CARRY = MEMBER_AT + 18 * ROW
export const AIR_START_C = MEMBER_AT + 19 * ROW
export const AIR_END_C = MEMBER_AT + 20 * ROW
export const RADIANT_START_C = MEMBER_AT + 21 * ROW
export const RADIANT_END_C = MEMBER_AT + 22 * ROW
export const NET_WPM2 = MEMBER_AT + 23 * ROW
export const SLOPE_WPM2K = MEMBER_AT + 24 * ROW
export const RATE_START = MEMBER_AT + 25 * ROW
export const OUTER_C = MEMBER_AT + 26 * ROW
/** What evaporates in the step, kg/m², and the skin's error. */
export const EVAPORATED = MEMBER_AT + 27 * ROW
export const ERROR_K = MEMBER_AT + 28 * ROW
/** All ones where: the held nodes stay as they are, a node was let go, the try is accepted. */
export const KEEP = MEMBER_AT + 29 * ROW
export const RELEASED = MEMBER_AT + 30 * ROW
export const ACCEPTED = MEMBER_AT + 31 * ROW
/** d(net) for warmer air and for warmer walls, W/m²K, and what their change within the step adds to its first stage. */
export const PER_AIR = MEMBER_AT + 32 * ROW
export const PER_RADIANT = MEMBER_AT + 33 * ROW
export const SHIFT_WPM2 = MEMBER_AT + 34 * ROW

/** Rows of f64: the lane's march. Times are s after meat-on. */
const MARCH_AT = 4096
export const NOW = MARCH_AT
export const END = MARCH_AT + WIDE
export const GOAL = MARCH_AT + 2 * WIDE
/** The caller must look at the cooker then: an event, or the end of its path as written so far. */
export const EVENT = MARCH_AT + 3 * WIDE
export const GRID_S = MARCH_AT + 4 * WIDE
export const PER_CLOCK = MARCH_AT + 5 * WIDE
export const PATH_FROM = MARCH_AT + 6 * WIDE
export const PATH_PER_S = MARCH_AT + 7 * WIDE
export const LEVEL = MARCH_AT + 8 * WIDE
export const PROBE_PART = MARCH_AT + 9 * WIDE
export const PROBE_BIAS = MARCH_AT + 10 * WIDE
/** The core before and at its latest, and the step between; from them the peak is read. */
export const CORE_BEFORE = MARCH_AT + 11 * WIDE
export const CORE_TOP = MARCH_AT + 12 * WIDE
export const CORE_AFTER = MARCH_AT + 13 * WIDE
export const BEFORE_S = MARCH_AT + 14 * WIDE
export const AFTER_S = MARCH_AT + 15 * WIDE
export const PEAK_NOW = MARCH_AT + 16 * WIDE

/** Rows of i32: the lane's state. */
const STATE_AT = 6144
export const MODE = STATE_AT
export const WATCH = STATE_AT + ROW
export const MET = STATE_AT + 2 * ROW
export const PEAK = STATE_AT + 3 * ROW
export const PATH_LAST = STATE_AT + 4 * ROW
export const PROBE_BELOW = STATE_AT + 5 * ROW
export const SAMPLES = STATE_AT + 6 * ROW

/** MODE: no member, marching, trying the same step anew. */
export const IDLE = 0
export const MARCHING = 1
export const RETRYING = 2
/** WATCH: for the probe to rise to the level, or to fall to it. */
export const RISING = 1
export const FALLING = 2
/** PEAK: not looked for, looked for, stopped at, found. */
export const PEAK_SOUGHT = 1
export const PEAK_STOPS = 2
export const PEAK_FOUND = 3

/** Columns of nodes: a node's rows of f32 lie side by side. */
export const NODES_AT = 8192
export const MOST_NODES = 48
export const TEMP = 0
export const NEXT = ROW
export const K_NOW = 2 * ROW
export const C_NOW = 3 * ROW
export const K_BEFORE = 4 * ROW
export const C_BEFORE = 5 * ROW
export const PEAK_C = 6 * ROW
export const JUICE = 7 * ROW
export const KILL = 8 * ROW
export const BOILABLE = 9 * ROW
export const HELD = 10 * ROW
/** The mesh in the member's size: link over k, volume, shared volume. */
export const UNIT_LINK = 11 * ROW
export const CELL = 12 * ROW
export const UNIT_SHARED = 13 * ROW
export const LINK = 14 * ROW
export const HEAT = 15 * ROW
export const SHARED = 16 * ROW
export const PIVOT = 17 * ROW
export const LIFT = 18 * ROW
export const FIRST = 19 * ROW
export const SECOND = 20 * ROW
export const NODE = 21 * ROW

/** The material, 1 K apart: k, ρc, juice in the end, kill per s, and the change of each to the next row. */
export const TABLE_AT = 65536
export const TABLE_ROW = 32
export const MOST_ROWS = 1024

/** The cooker's path of each lane: knots of reading, air, radiant, spare; f32. */
export const PATHS_AT = 98304
export const KNOT = 16
export const MOST_KNOTS = 256
export const PATH = MOST_KNOTS * KNOT

/**
 * Samples of each lane, f32: cooker, skin, core, probe; then the outermost node that is still wet (its number), its
 * temperature and that of the node below it.
 */
export const SAMPLES_AT = 131072
export const SAMPLE = 32
export const MOST_SAMPLES = 2176
export const LANE_SAMPLES = MOST_SAMPLES * SAMPLE

export const PAGES = 12
