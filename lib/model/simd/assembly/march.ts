/** The march of eight lanes, each with its own time, step, goal and watch, until one of them needs its script (simulate.ts). */
import {
  ACCEPTED,
  AFTER_S,
  AIR_END_C,
  AIR_START_C,
  BEFORE_S,
  BOILING_C,
  CARRY,
  CORE_AFTER,
  CORE_BEFORE,
  CORE_TOP,
  COUNT,
  DRY,
  END,
  ERROR_K,
  EVAPORATED,
  EVENT,
  FEED,
  GAMMA,
  GOAL,
  GRID_S,
  IDLE,
  KEEP,
  KNOT,
  LANES,
  LANE_SAMPLES,
  LAST_STEP_S,
  LEAST_STEP_S,
  LET_GO_RATE,
  LEVEL,
  MARCHING,
  MET,
  MODE,
  MOST_SAMPLES,
  NET_WPM2,
  NEXT,
  NODE,
  NODES_AT,
  NOW,
  OUTER_C,
  PATH,
  PATHS_AT,
  PATH_FROM,
  PATH_LAST,
  PATH_PER_S,
  PEAK,
  PEAK_FOUND,
  PEAK_NOW,
  PEAK_SOUGHT,
  PEAK_STOPS,
  PER_AIR,
  PER_CLOCK,
  PER_RADIANT,
  PROBE_BELOW,
  PROBE_BIAS,
  PROBE_PART,
  RADIANT_END_C,
  RADIANT_START_C,
  RATE_START,
  RELEASED,
  RETRYING,
  RISING,
  SAMPLE,
  SAMPLES,
  SAMPLES_AT,
  SAMPLE_S,
  SHIFT_WPM2,
  SKIN_ERROR_K,
  SLOW_AFTER_S,
  TAKEN,
  STEP_S,
  TEMP,
  WATCH,
} from '../layout'
import { accept, release } from './ageing'
import { sweepDown, sweepDownAgain, sweepUp, sweepUpAgain } from './interior'
import { skinLaw } from './skin'

@inline
function wide(row: i32, lane: i32): f64 {
  return load<f64>(row + (lane << 3))
}
@inline
function setWide(row: i32, lane: i32, value: f64): void {
  store<f64>(row + (lane << 3), value)
}
@inline
function set32(row: i32, lane: i32, value: f32): void {
  store<f32>(row + (lane << 2), value)
}
@inline
function state(row: i32, lane: i32): i32 {
  return load<i32>(row + (lane << 2))
}
@inline
function setState(row: i32, lane: i32, value: i32): void {
  store<i32>(row + (lane << 2), value)
}

/** Marches on; returns the lanes that have come to their goal, an event or their peak, as bits. At least one must march. */
export function advance(): i32 {
  for (;;) {
    for (let lane: i32 = 0; lane < LANES; lane++) plan(lane)
    tryStep()
    let stopped = 0
    for (let lane: i32 = 0; lane < LANES; lane++) stopped |= judge(lane) << lane
    settle(0)
    settle(16)
    for (let lane: i32 = 0; lane < LANES; lane++) stopped |= arrive(lane) << lane
    if (stopped) return stopped
  }
  return 0
}

/** Chooses the lane's step and looks up its surroundings at both ends. */
@inline
function plan(lane: i32): void {
  const mode = state(MODE, lane)
  const now = wide(NOW, lane)
  if (mode == IDLE) {
    set32(STEP_S, lane, 0)
    return
  }
  if (mode == MARCHING) {
    let grid = wide(GRID_S, lane)
    if (now >= load<f64>(SLOW_AFTER_S)) grid = Math.min(load<f64>(SAMPLE_S), 2 * grid)
    const next = (Math.floor(now / grid + 1e-9) + 1) * grid
    setWide(END, lane, Math.min(next, Math.min(wide(GOAL, lane), wide(EVENT, lane))))
    setState(KEEP, lane, 0)
    const start = around(lane, now)
    set32(AIR_START_C, lane, f32x4.extract_lane(start, 1))
    set32(RADIANT_START_C, lane, f32x4.extract_lane(start, 2))
  }
  const endS = wide(END, lane)
  const stepS = <f32>((endS - now) * wide(PER_CLOCK, lane))
  const lastS = load<f32>(LAST_STEP_S + (lane << 2))
  set32(STEP_S, lane, stepS)
  set32(CARRY, lane, lastS > 0 ? min<f32>(1, stepS / (2 * lastS)) : 0)
  const end = around(lane, endS)
  set32(AIR_END_C, lane, f32x4.extract_lane(end, 1))
  set32(RADIANT_END_C, lane, f32x4.extract_lane(end, 2))
}

/** The cooker at a time: reading, air, radiant. */
@inline
function around(lane: i32, timeS: f64): v128 {
  const at = (timeS - wide(PATH_FROM, lane)) * wide(PATH_PER_S, lane)
  const knot = min<i32>(state(PATH_LAST, lane) - 1, <i32>at)
  const place: i32 = PATHS_AT + lane * PATH + knot * KNOT
  const before = v128.load(place)
  const part = f32x4.splat(<f32>(at - <f64>knot))
  return f32x4.add(before, f32x4.mul(part, f32x4.sub(v128.load(place, KNOT), before)))
}

function tryStep(): void {
  const skin: i32 = NODES_AT + (load<i32>(COUNT) - 1) * NODE
  begin(0, skin)
  begin(16, skin)
  sweepUp()
  sweepDown()
  const firstA = v128.load(skin, NEXT)
  const firstB = v128.load(skin + 16, NEXT)
  finish(0, firstA)
  finish(16, firstB)
  sweepUpAgain()
  sweepDownAgain()
  v128.store(ERROR_K, f32x4.abs(f32x4.sub(v128.load(skin, NEXT), firstA)))
  v128.store(ERROR_K + 16, f32x4.abs(f32x4.sub(v128.load(skin + 16, NEXT), firstB)))
  release(0)
  release(16)
}

/** The skin at the start of the step. */
function begin(at: i32, skin: i32): void {
  const frontC = v128.load(skin + at, TEMP)
  const airC = v128.load(at + AIR_START_C)
  const radiantC = v128.load(at + RADIANT_START_C)
  v128.store(at + RATE_START, skinLaw(at, frontC, v128.load(at + DRY), airC, radiantC))
  const byAir = f32x4.mul(v128.load(at + PER_AIR), f32x4.sub(v128.load(at + AIR_END_C), airC))
  const byWalls = f32x4.mul(v128.load(at + PER_RADIANT), f32x4.sub(v128.load(at + RADIANT_END_C), radiantC))
  const shift = f32x4.mul(v128.load32_splat(GAMMA), f32x4.add(byAir, byWalls))
  v128.store(at + SHIFT_WPM2, shift)
  v128.store(at + NET_WPM2, f32x4.add(v128.load(at + NET_WPM2), shift))
}

/** The skin at its end, and what evaporates till then. */
function finish(at: i32, frontC: v128): void {
  const stepS = v128.load(at + STEP_S)
  const startRate = v128.load(at + RATE_START)
  const feed = f32x4.mul(v128.load(at + FEED), v128.load(at + LET_GO_RATE))
  const drying = f32x4.mul(stepS, f32x4.sub(startRate, feed))
  const dry = f32x4.pmax(f32x4.splat(0), f32x4.add(v128.load(at + DRY), drying))
  const airC = v128.load(at + AIR_END_C)
  const endRate = skinLaw(at, frontC, dry, airC, v128.load(at + RADIANT_END_C))
  v128.store(at + NET_WPM2, f32x4.sub(v128.load(at + NET_WPM2), v128.load(at + SHIFT_WPM2)))
  const mean = f32x4.mul(f32x4.splat(0.5), f32x4.add(startRate, endRate))
  v128.store(at + EVAPORATED, f32x4.mul(stepS, mean))
}

/** What becomes of the try; 1 where the lane stands at its goal already. */
@inline
function judge(lane: i32): i32 {
  setState(ACCEPTED, lane, 0)
  if (state(MODE, lane) == IDLE) return 0
  const now = wide(NOW, lane)
  const endS = wide(END, lane)
  setState(MODE, lane, RETRYING)
  if (state(RELEASED, lane)) {
    setState(KEEP, lane, -1)
    return 0
  }
  setState(KEEP, lane, 0)
  const error = <f64>load<f32>(ERROR_K + (lane << 2))
  if (!(error <= load<f64>(SKIN_ERROR_K)) && endS - now > load<f64>(LEAST_STEP_S)) {
    setWide(END, lane, now + (endS - now) / 2)
    return 0
  }
  const watch = state(WATCH, lane)
  if (watch) {
    const level = wide(LEVEL, lane)
    const after = probeC(lane, NEXT)
    if (watch == RISING ? after >= level : after <= level) {
      const before = probeC(lane, TEMP)
      const share = after == before ? 1 : Math.min(1, Math.max(0, (level - before) / (after - before)))
      const crossS = now + share * (endS - now)
      setWide(END, lane, crossS)
      setWide(GOAL, lane, crossS)
      setState(WATCH, lane, 0)
      setState(MET, lane, 1)
      return crossS <= now ? 1 : 0
    }
  }
  setState(ACCEPTED, lane, -1)
  return 0
}

@inline
function probeC(lane: i32, row: i32): f64 {
  const below: i32 = NODES_AT + state(PROBE_BELOW, lane) * NODE + row + (lane << 2)
  const a = <f64>load<f32>(below)
  return a + wide(PROBE_PART, lane) * (<f64>load<f32>(below + NODE) - a) + wide(PROBE_BIAS, lane)
}

function settle(at: i32): void {
  accept(at)
  const accepted = v128.load(at + ACCEPTED)
  v128.store(at + LAST_STEP_S, v128.bitselect(v128.load(at + STEP_S), v128.load(at + LAST_STEP_S), accepted))
}

/** After an accepted step: time, sample, peak; 1 where the lane has come to its goal, an event or its peak. */
@inline
function arrive(lane: i32): i32 {
  if (!state(ACCEPTED, lane)) return 0
  const now = wide(END, lane)
  const tookS = now - wide(NOW, lane)
  setWide(NOW, lane, now)
  setState(MODE, lane, MARCHING)
  store<i32>(TAKEN, load<i32>(TAKEN) + 1)
  const peaked = notePeak(lane, now, tookS)
  const everyS = load<f64>(SAMPLE_S)
  if (Math.floor(now / everyS) * everyS == now) sample(lane, now)
  return now >= wide(GOAL, lane) || now >= wide(EVENT, lane) || peaked ? 1 : 0
}

function sample(lane: i32, now: f64): void {
  const n = state(SAMPLES, lane)
  if (n >= MOST_SAMPLES) return
  const skin: i32 = NODES_AT + (load<i32>(COUNT) - 1) * NODE + (lane << 2)
  const place: i32 = SAMPLES_AT + lane * LANE_SAMPLES + n * SAMPLE
  store<f32>(place, f32x4.extract_lane(around(lane, now), 0))
  store<f32>(place, load<f32>(OUTER_C + (lane << 2)), 4)
  store<f32>(place, load<f32>(NODES_AT + (lane << 2), TEMP), 8)
  store<f32>(place, <f32>probeC(lane, TEMP), 12)
  const boilingC = load<f32>(BOILING_C)
  let wet = skin
  let number = load<i32>(COUNT) - 1
  while (number > 1 && load<f32>(wet, TEMP) >= boilingC) {
    wet -= NODE
    number--
  }
  store<f32>(place, <f32>number, 16)
  store<f32>(place, load<f32>(wet, TEMP), 20)
  store<f32>(place, load<f32>(wet - NODE, TEMP), 24)
  setState(SAMPLES, lane, n + 1)
}

/** Keeps the last three cores until the core falls; true where the march stops at that. */
@inline
function notePeak(lane: i32, now: f64, tookS: f64): bool {
  const sought = state(PEAK, lane)
  if (sought != PEAK_SOUGHT && sought != PEAK_STOPS) return false
  const core = <f64>load<f32>(NODES_AT + (lane << 2), TEMP)
  setWide(AFTER_S, lane, tookS)
  if (core < wide(CORE_TOP, lane)) {
    setWide(CORE_AFTER, lane, core)
    setWide(PEAK_NOW, lane, now)
    setState(PEAK, lane, PEAK_FOUND)
    return sought == PEAK_STOPS
  }
  setWide(CORE_BEFORE, lane, wide(CORE_TOP, lane))
  setWide(CORE_TOP, lane, core)
  setWide(BEFORE_S, lane, tookS)
  return false
}
