/** The most multiply-adds that this machine can do on one core, for the bench to hold the kernel against. */

/** `rounds` times 12 independent f32x4 multiply-adds: 96 flops a round. Returns a number so that nothing is left out. */
export function multiplyAdd(rounds: i32): f32 {
  const m = f32x4.splat(0.999)
  const c = f32x4.splat(0.001)
  let a0 = f32x4.splat(1)
  let a1 = f32x4.splat(2)
  let a2 = f32x4.splat(3)
  let a3 = f32x4.splat(4)
  let a4 = f32x4.splat(5)
  let a5 = f32x4.splat(6)
  let a6 = f32x4.splat(7)
  let a7 = f32x4.splat(8)
  let a8 = f32x4.splat(9)
  let a9 = f32x4.splat(10)
  let a10 = f32x4.splat(11)
  let a11 = f32x4.splat(12)
  for (let i = 0; i < rounds; i++) {
    a0 = f32x4.add(f32x4.mul(a0, m), c)
    a1 = f32x4.add(f32x4.mul(a1, m), c)
    a2 = f32x4.add(f32x4.mul(a2, m), c)
    a3 = f32x4.add(f32x4.mul(a3, m), c)
    a4 = f32x4.add(f32x4.mul(a4, m), c)
    a5 = f32x4.add(f32x4.mul(a5, m), c)
    a6 = f32x4.add(f32x4.mul(a6, m), c)
    a7 = f32x4.add(f32x4.mul(a7, m), c)
    a8 = f32x4.add(f32x4.mul(a8, m), c)
    a9 = f32x4.add(f32x4.mul(a9, m), c)
    a10 = f32x4.add(f32x4.mul(a10, m), c)
    a11 = f32x4.add(f32x4.mul(a11, m), c)
  }
  const low = f32x4.add(f32x4.add(f32x4.add(a0, a1), f32x4.add(a2, a3)), f32x4.add(a4, a5))
  const high = f32x4.add(f32x4.add(f32x4.add(a6, a7), f32x4.add(a8, a9)), f32x4.add(a10, a11))
  return f32x4.extract_lane(f32x4.add(low, high), 0)
}
