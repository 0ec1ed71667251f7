/** One try of ROS2 through the columns of eight lanes (conduction.ts), two vectors side by side to hide each other's latency. */
import {
  BOILABLE,
  BOILING_C,
  CARRY,
  CELL,
  COUNT,
  C_BEFORE,
  C_NOW,
  FIRST,
  GAMMA,
  HEAT,
  HELD,
  HELD_MORE,
  KEEP,
  K_BEFORE,
  K_NOW,
  LIFT,
  LINK,
  NET_WPM2,
  NEXT,
  NODE,
  NODES_AT,
  PIVOT,
  SECOND,
  SHARED,
  SLOPE_WPM2K,
  STEP_S,
  TEMP,
  UNIT_LINK,
  UNIT_SHARED,
} from '../layout'

/** A property at the middle of the step, carried on as it has been changing. */
@inline
function foreseen(node: i32, now: i32, before: i32, carry: v128): v128 {
  const at = v128.load(node + now)
  return f32x4.add(at, f32x4.mul(carry, f32x4.sub(at, v128.load(node + before))))
}

/** The node's heat capacity, many times over where it is held at the boiling point for this try. */
@inline
function capacityOf(node: i32, carry: v128, boilingC: v128, keep: v128, heldMore: v128): v128 {
  const plain = foreseen(node, C_NOW, C_BEFORE, carry)
  const boils = v128.and(
    f32x4.ge(v128.load(node, TEMP), boilingC),
    f32x4.gt(v128.load(node, BOILABLE), f32x4.splat(0)),
  )
  const held = v128.bitselect(v128.load(node, HELD), boils, keep)
  v128.store(node, held, HELD)
  return f32x4.add(plain, v128.and(held, f32x4.mul(heldMore, plain)))
}

/** First stage, centre to skin: factorises and eliminates. In terms of what is left, for a difference would lose f32's digits. */
export function sweepUp(): void {
  const count = load<i32>(COUNT)
  const boilingC = v128.load32_splat(BOILING_C)
  const heldMore = v128.load32_splat(HELD_MORE)
  const dampA = f32x4.mul(v128.load32_splat(GAMMA), v128.load(STEP_S))
  const dampB = f32x4.mul(v128.load32_splat(GAMMA), v128.load(STEP_S + 16))
  const carryA = v128.load(CARRY)
  const carryB = v128.load(CARRY + 16)
  const keepA = v128.load(KEEP)
  const keepB = v128.load(KEEP + 16)
  const one = f32x4.splat(1)
  let leftA = f32x4.splat(0)
  let leftB = leftA
  let carriedA = leftA
  let carriedB = leftA
  let fromBelowA = leftA
  let fromBelowB = leftA
  let node: i32 = NODES_AT
  const last: i32 = NODES_AT + (count - 1) * NODE
  let kA = foreseen(node, K_NOW, K_BEFORE, carryA)
  let kB = foreseen(node + 16, K_NOW, K_BEFORE, carryB)
  let cA = capacityOf(node, carryA, boilingC, keepA, heldMore)
  let cB = capacityOf(node + 16, carryB, boilingC, keepB, heldMore)
  let tA = v128.load(node, TEMP)
  let tB = v128.load(node + 16, TEMP)
  while (node < last) {
    const above = node + NODE
    const inLast = above == last
    const kAboveA = foreseen(above, K_NOW, K_BEFORE, carryA)
    const kAboveB = foreseen(above + 16, K_NOW, K_BEFORE, carryB)
    // the skin itself never boils: what it carries away is the law's
    const cAboveA = inLast ? foreseen(above, C_NOW, C_BEFORE, carryA) : capacityOf(above, carryA, boilingC, keepA, heldMore)
    const cAboveB = inLast
      ? foreseen(above + 16, C_NOW, C_BEFORE, carryB)
      : capacityOf(above + 16, carryB, boilingC, keepB, heldMore)
    const tAboveA = v128.load(above, TEMP)
    const tAboveB = v128.load(above + 16, TEMP)
    const linkA = f32x4.mul(f32x4.add(kA, kAboveA), v128.load(node, UNIT_LINK))
    const linkB = f32x4.mul(f32x4.add(kB, kAboveB), v128.load(node + 16, UNIT_LINK))
    const toAboveA = f32x4.mul(linkA, f32x4.sub(tA, tAboveA))
    const toAboveB = f32x4.mul(linkB, f32x4.sub(tB, tAboveB))
    const heatA = f32x4.mul(cA, v128.load(node, CELL))
    const heatB = f32x4.mul(cB, v128.load(node + 16, CELL))
    const sharedA = f32x4.mul(f32x4.pmin(cA, cAboveA), v128.load(node, UNIT_SHARED))
    const sharedB = f32x4.mul(f32x4.pmin(cB, cAboveB), v128.load(node + 16, UNIT_SHARED))
    const coupledA = f32x4.sub(f32x4.mul(dampA, linkA), sharedA)
    const coupledB = f32x4.sub(f32x4.mul(dampB, linkB), sharedB)
    const ownA = f32x4.add(heatA, leftA)
    const ownB = f32x4.add(heatB, leftB)
    const pivotA = f32x4.div(one, f32x4.add(ownA, coupledA))
    const pivotB = f32x4.div(one, f32x4.add(ownB, coupledB))
    const liftA = f32x4.mul(coupledA, pivotA)
    const liftB = f32x4.mul(coupledB, pivotB)
    const rightA = f32x4.add(f32x4.sub(fromBelowA, toAboveA), carriedA)
    const rightB = f32x4.add(f32x4.sub(fromBelowB, toAboveB), carriedB)
    v128.store(node, linkA, LINK)
    v128.store(node + 16, linkB, LINK)
    v128.store(node, heatA, HEAT)
    v128.store(node + 16, heatB, HEAT)
    v128.store(node, sharedA, SHARED)
    v128.store(node + 16, sharedB, SHARED)
    v128.store(node, pivotA, PIVOT)
    v128.store(node + 16, pivotB, PIVOT)
    v128.store(node, liftA, LIFT)
    v128.store(node + 16, liftB, LIFT)
    v128.store(node, rightA, FIRST)
    v128.store(node + 16, rightB, FIRST)
    leftA = f32x4.mul(ownA, liftA)
    leftB = f32x4.mul(ownB, liftB)
    carriedA = f32x4.mul(liftA, rightA)
    carriedB = f32x4.mul(liftB, rightB)
    fromBelowA = toAboveA
    fromBelowB = toAboveB
    kA = kAboveA
    kB = kAboveB
    cA = cAboveA
    cB = cAboveB
    tA = tAboveA
    tB = tAboveB
    node = above
  }
  endUp(last, 0, cA, leftA, dampA, fromBelowA, carriedA)
  endUp(last, 16, cB, leftB, dampB, fromBelowB, carriedB)
}

/** The skin's own row of the first stage. */
@inline
function endUp(last: i32, at: i32, c: v128, left: v128, damp: v128, fromBelow: v128, carried: v128): void {
  const heat = f32x4.mul(c, v128.load(last + at, CELL))
  v128.store(last + at, heat, HEAT)
  const own = f32x4.sub(f32x4.add(heat, left), f32x4.mul(damp, v128.load(at + SLOPE_WPM2K)))
  v128.store(last + at, f32x4.div(f32x4.splat(1), own), PIVOT)
  v128.store(last + at, f32x4.add(f32x4.add(fromBelow, v128.load(at + NET_WPM2)), carried), FIRST)
}

/** Skin to centre: the rates of the first stage, and the temperatures after a whole step of them. */
export function sweepDown(): void {
  const stepA = v128.load(STEP_S)
  const stepB = v128.load(STEP_S + 16)
  let node: i32 = NODES_AT + (load<i32>(COUNT) - 1) * NODE
  let rateA = f32x4.mul(v128.load(node, FIRST), v128.load(node, PIVOT))
  let rateB = f32x4.mul(v128.load(node + 16, FIRST), v128.load(node + 16, PIVOT))
  for (;;) {
    v128.store(node, rateA, FIRST)
    v128.store(node + 16, rateB, FIRST)
    v128.store(node, f32x4.add(v128.load(node, TEMP), f32x4.mul(stepA, rateA)), NEXT)
    v128.store(node + 16, f32x4.add(v128.load(node + 16, TEMP), f32x4.mul(stepB, rateB)), NEXT)
    if (node == NODES_AT) return
    node -= NODE
    const a = f32x4.mul(v128.load(node, LIFT), rateA)
    const b = f32x4.mul(v128.load(node + 16, LIFT), rateB)
    rateA = f32x4.add(f32x4.mul(v128.load(node, FIRST), v128.load(node, PIVOT)), a)
    rateB = f32x4.add(f32x4.mul(v128.load(node + 16, FIRST), v128.load(node + 16, PIVOT)), b)
  }
}

/** Second stage, centre to skin, with the factorisation of the first. */
export function sweepUpAgain(): void {
  const last: i32 = NODES_AT + (load<i32>(COUNT) - 1) * NODE
  const two = f32x4.splat(2)
  let node: i32 = NODES_AT
  let carriedA = f32x4.splat(0)
  let carriedB = carriedA
  let fromBelowA = carriedA
  let fromBelowB = carriedA
  let tA = v128.load(node, NEXT)
  let tB = v128.load(node + 16, NEXT)
  let rateA = f32x4.mul(two, v128.load(node, FIRST))
  let rateB = f32x4.mul(two, v128.load(node + 16, FIRST))
  while (node < last) {
    const above = node + NODE
    const tAboveA = v128.load(above, NEXT)
    const tAboveB = v128.load(above + 16, NEXT)
    const rateAboveA = f32x4.mul(two, v128.load(above, FIRST))
    const rateAboveB = f32x4.mul(two, v128.load(above + 16, FIRST))
    const toAboveA = f32x4.add(
      f32x4.mul(v128.load(node, LINK), f32x4.sub(tA, tAboveA)),
      f32x4.mul(v128.load(node, SHARED), f32x4.sub(rateAboveA, rateA)),
    )
    const toAboveB = f32x4.add(
      f32x4.mul(v128.load(node + 16, LINK), f32x4.sub(tB, tAboveB)),
      f32x4.mul(v128.load(node + 16, SHARED), f32x4.sub(rateAboveB, rateB)),
    )
    const storedA = f32x4.mul(v128.load(node, HEAT), rateA)
    const storedB = f32x4.mul(v128.load(node + 16, HEAT), rateB)
    const rightA = f32x4.add(f32x4.sub(f32x4.sub(fromBelowA, toAboveA), storedA), carriedA)
    const rightB = f32x4.add(f32x4.sub(f32x4.sub(fromBelowB, toAboveB), storedB), carriedB)
    v128.store(node, rightA, SECOND)
    v128.store(node + 16, rightB, SECOND)
    carriedA = f32x4.mul(v128.load(node, LIFT), rightA)
    carriedB = f32x4.mul(v128.load(node + 16, LIFT), rightB)
    fromBelowA = toAboveA
    fromBelowB = toAboveB
    tA = tAboveA
    tB = tAboveB
    rateA = rateAboveA
    rateB = rateAboveB
    node = above
  }
  endUpAgain(last, 0, rateA, fromBelowA, carriedA)
  endUpAgain(last, 16, rateB, fromBelowB, carriedB)
}

@inline
function endUpAgain(last: i32, at: i32, rate: v128, fromBelow: v128, carried: v128): void {
  const stored = f32x4.mul(v128.load(last + at, HEAT), rate)
  const right = f32x4.sub(f32x4.add(fromBelow, v128.load(at + NET_WPM2)), stored)
  v128.store(last + at, f32x4.add(right, carried), SECOND)
}

/** Skin to centre: T' = T + dt (3 a + b) / 2. */
export function sweepDownAgain(): void {
  const half = f32x4.splat(0.5)
  const more = f32x4.splat(1.5)
  const stepA = v128.load(STEP_S)
  const stepB = v128.load(STEP_S + 16)
  let node: i32 = NODES_AT + (load<i32>(COUNT) - 1) * NODE
  let rateA = f32x4.mul(v128.load(node, SECOND), v128.load(node, PIVOT))
  let rateB = f32x4.mul(v128.load(node + 16, SECOND), v128.load(node + 16, PIVOT))
  for (;;) {
    const meanA = f32x4.add(f32x4.mul(more, v128.load(node, FIRST)), f32x4.mul(half, rateA))
    const meanB = f32x4.add(f32x4.mul(more, v128.load(node + 16, FIRST)), f32x4.mul(half, rateB))
    v128.store(node, f32x4.add(v128.load(node, TEMP), f32x4.mul(stepA, meanA)), NEXT)
    v128.store(node + 16, f32x4.add(v128.load(node + 16, TEMP), f32x4.mul(stepB, meanB)), NEXT)
    if (node == NODES_AT) return
    node -= NODE
    const a = f32x4.mul(v128.load(node, LIFT), rateA)
    const b = f32x4.mul(v128.load(node + 16, LIFT), rateB)
    rateA = f32x4.add(f32x4.mul(v128.load(node, SECOND), v128.load(node, PIVOT)), a)
    rateB = f32x4.add(f32x4.mul(v128.load(node + 16, SECOND), v128.load(node + 16, PIVOT)), b)
  }
}
