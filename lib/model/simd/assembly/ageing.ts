/** What an accepted step leaves behind in each node: water boiled off, juice let go, kill, peaks, new properties (meat.ts). */
import {
  ACCEPTED,
  BOILABLE,
  BOILED,
  BOILING_C,
  CAPACITY_FLOOR,
  CAPACITY_PER_JUICE,
  CELL,
  CONDUCTION_PER_JUICE,
  COUNT,
  C_BEFORE,
  C_FACTOR,
  C_NOW,
  DRY,
  EVAPORATED,
  FEED,
  HEAT,
  HELD,
  JUICE,
  JUICE_FACTOR,
  JUICE_RATE_PS,
  KILL,
  K_BEFORE,
  K_FACTOR,
  K_NOW,
  LATENT_JPKG,
  LET_GO_RATE,
  LOST,
  NEXT,
  NODE,
  NODES_AT,
  ONE,
  PEAK_C,
  RELEASED,
  RHO_KGPM3,
  STEP_S,
  TABLE_AT,
  TABLE_FROM_C,
  TABLE_LAST,
  TEMP,
  WHOLE,
} from '../layout'

/** Lets go of held nodes that would not boil through the whole step; marks their lanes. */
export function release(at: i32): void {
  const boilingC = v128.load32_splat(BOILING_C)
  const latent = v128.load32_splat(LATENT_JPKG)
  const last: i32 = NODES_AT + (load<i32>(COUNT) - 1) * NODE
  let released = i32x4.splat(0)
  for (let node: i32 = NODES_AT + at; node < last; node += NODE) {
    const held = v128.load(node, HELD)
    if (!v128.any_true(held)) continue
    const heat = f32x4.mul(f32x4.sub(v128.load(node, NEXT), boilingC), v128.load(node, HEAT))
    const boils = v128.and(
      f32x4.ge(heat, f32x4.splat(0)),
      f32x4.le(heat, f32x4.mul(v128.load(node, BOILABLE), latent)),
    )
    const loose = v128.andnot(held, boils)
    released = v128.or(released, loose)
    v128.store(node, v128.andnot(held, loose), HELD)
  }
  v128.store(at + RELEASED, released)
}

/** Makes the try so in the lanes that accept it; mostly all do, and then nothing need be picked. */
export function accept(at: i32): void {
  const accepted = v128.load(at + ACCEPTED)
  if (i32x4.all_true(accepted)) acceptIn(at, true, accepted)
  else acceptIn(at, false, accepted)
}

@inline
function acceptIn(at: i32, all: bool, accepted: v128): void {
  const last: i32 = NODES_AT + at + (load<i32>(COUNT) - 1) * NODE
  const boilingC = v128.load32_splat(BOILING_C)
  const stepS = v128.and(accepted, v128.load(at + STEP_S))
  const gain = juiceGain(stepS)
  // numbers of the loop come from memory: written as constants they would be built anew in each round
  const fromC = v128.load32_splat(TABLE_FROM_C)
  const tableLast = v128.load32_splat(TABLE_LAST)
  const whole = v128.load32_splat(WHOLE)
  const one = v128.load32_splat(ONE)
  const perJuice = v128.load32_splat(CAPACITY_PER_JUICE)
  const conductionPerJuice = v128.load32_splat(CONDUCTION_PER_JUICE)
  const floor = v128.load32_splat(CAPACITY_FLOOR)
  const kFactor = v128.load(at + K_FACTOR)
  const cFactor = v128.load(at + C_FACTOR)
  const juiceFactor = v128.load(at + JUICE_FACTOR)
  const zero = f32x4.splat(0)
  let letGo = zero
  let behind = zero
  v128.store(at + BOILED, zero)
  for (let node: i32 = NODES_AT + at; node <= last; node += NODE) {
    let tempC = v128.load(node, NEXT)
    if (!all) tempC = v128.bitselect(tempC, v128.load(node, TEMP), accepted)
    const over = f32x4.gt(tempC, boilingC)
    if (v128.any_true(over) && node < last) tempC = boil(node, at, tempC, v128.and(over, accepted))
    v128.store(node, tempC, TEMP)
    v128.store(node, f32x4.pmax(v128.load(node, PEAK_C), tempC), PEAK_C)
    const place = f32x4.pmin(tableLast, f32x4.pmax(zero, f32x4.sub(tempC, fromC)))
    const low = f32x4.floor(place)
    const part = f32x4.sub(place, low)
    const offset = i32x4.shl(f32x4.add(low, whole), 5)
    const r0 = row(i32x4.extract_lane(offset, 0), i32x4.shuffle(part, part, 0, 0, 0, 0))
    const r1 = row(i32x4.extract_lane(offset, 1), i32x4.shuffle(part, part, 1, 1, 1, 1))
    const r2 = row(i32x4.extract_lane(offset, 2), i32x4.shuffle(part, part, 2, 2, 2, 2))
    const r3 = row(i32x4.extract_lane(offset, 3), i32x4.shuffle(part, part, 3, 3, 3, 3))
    const low01 = i32x4.shuffle(r0, r1, 0, 4, 1, 5)
    const low23 = i32x4.shuffle(r2, r3, 0, 4, 1, 5)
    const high01 = i32x4.shuffle(r0, r1, 2, 6, 3, 7)
    const high23 = i32x4.shuffle(r2, r3, 2, 6, 3, 7)
    const k = i64x2.shuffle(low01, low23, 0, 2)
    const c = i64x2.shuffle(low01, low23, 1, 3)
    const inTheEnd = f32x4.mul(juiceFactor, i64x2.shuffle(high01, high23, 0, 2))
    const kill = i64x2.shuffle(high01, high23, 1, 3)
    const before = v128.load(node, JUICE)
    const short = f32x4.pmax(zero, f32x4.sub(inTheEnd, before))
    const more = f32x4.mul(gain, short)
    const juice = f32x4.add(before, more)
    const cell = v128.load(node, CELL)
    letGo = f32x4.add(letGo, f32x4.mul(more, cell))
    behind = f32x4.add(behind, f32x4.mul(f32x4.sub(short, more), cell))
    v128.store(node, juice, JUICE)
    v128.store(node, f32x4.add(v128.load(node, KILL), f32x4.mul(stepS, kill)), KILL)
    const kNow = v128.load(node, K_NOW)
    const cNow = v128.load(node, C_NOW)
    v128.store(node, all ? kNow : v128.bitselect(kNow, v128.load(node, K_BEFORE), accepted), K_BEFORE)
    v128.store(node, all ? cNow : v128.bitselect(cNow, v128.load(node, C_BEFORE), accepted), C_BEFORE)
    const conductionLeft = f32x4.sub(one, f32x4.mul(conductionPerJuice, juice))
    v128.store(node, f32x4.mul(f32x4.mul(kFactor, conductionLeft), k), K_NOW)
    const capacityLeft = f32x4.pmax(floor, f32x4.sub(one, f32x4.mul(perJuice, juice)))
    v128.store(node, f32x4.mul(f32x4.mul(cFactor, capacityLeft), c), C_NOW)
  }
  settle(at, letGo, behind, accepted)
}

/** The column's budget of water: what evaporates or boils beyond the feed dries the meat out; feed not taken drips. */
@inline
function settle(at: i32, letGo: v128, behind: v128, accepted: v128): void {
  const rho = v128.load32_splat(RHO_KGPM3)
  const gone = f32x4.add(v128.and(accepted, v128.load(at + EVAPORATED)), v128.load(at + BOILED))
  const out = f32x4.mul(letGo, rho)
  const fed = f32x4.mul(v128.load(at + FEED), out)
  const before = f32x4.add(v128.load(at + DRY), f32x4.sub(gone, fed))
  const dry = f32x4.pmax(f32x4.splat(0), before)
  const dripped = f32x4.add(f32x4.sub(out, fed), f32x4.sub(dry, before))
  v128.store(at + DRY, dry)
  v128.store(at + LOST, f32x4.add(v128.load(at + LOST), f32x4.add(gone, dripped)))
  const rate = f32x4.mul(f32x4.mul(behind, rho), v128.load32_splat(JUICE_RATE_PS))
  v128.store(at + LET_GO_RATE, v128.bitselect(rate, v128.load(at + LET_GO_RATE), accepted))
}

/** Lanes over the boiling point fall back to it while they have water; what they had above it carries the vapour away. */
@inline
function boil(node: i32, at: i32, tempC: v128, over: v128): v128 {
  const boilingC = v128.load32_splat(BOILING_C)
  const latent = v128.load32_splat(LATENT_JPKG)
  const capacity = v128.load(node, HEAT)
  const heat = v128.and(over, f32x4.mul(f32x4.sub(tempC, boilingC), capacity))
  const boilable = v128.load(node, BOILABLE)
  const water = f32x4.pmin(f32x4.div(heat, latent), boilable)
  const left = f32x4.sub(boilable, water)
  v128.store(node, left, BOILABLE)
  v128.store(at + BOILED, f32x4.add(v128.load(at + BOILED), water))
  const short = f32x4.div(f32x4.sub(heat, f32x4.mul(water, latent)), capacity)
  const dry = v128.and(f32x4.eq(left, f32x4.splat(0)), short)
  return v128.bitselect(f32x4.add(boilingC, dry), tempC, over)
}

/** 1 - exp(-t/τ) by its series: t is at most a tenth of τ, and 1 - exp would lose f32's digits. */
@inline
function juiceGain(stepS: v128): v128 {
  const x = f32x4.mul(stepS, v128.load32_splat(JUICE_RATE_PS))
  const one = f32x4.splat(1)
  let p = f32x4.sub(one, f32x4.mul(x, f32x4.splat(1.0 / 5.0)))
  p = f32x4.sub(one, f32x4.mul(f32x4.mul(x, f32x4.splat(1.0 / 4.0)), p))
  p = f32x4.sub(one, f32x4.mul(f32x4.mul(x, f32x4.splat(1.0 / 3.0)), p))
  p = f32x4.sub(one, f32x4.mul(f32x4.mul(x, f32x4.splat(0.5)), p))
  return f32x4.mul(x, p)
}

/** A whole number plus 2^23 lies in the low bits of an f32; shifted up by 5 it is the offset of a table row. */
const TABLE_BASE: i32 = TABLE_AT - 0x60000000

/** One lane's row of the table, read off between two temperatures. */
@inline
function row(offset: i32, part: v128): v128 {
  const place: i32 = offset + TABLE_BASE
  return f32x4.add(v128.load(place), f32x4.mul(part, v128.load(place, 16)))
}
