/** Powers and logarithms of four numbers at once, within 2e-7 of their value. */

/** Adding it leaves a whole number in the low bits: 1.5 · 2^23. */
const TO_WHOLE: f32 = 12582912

/** 2^x for x above -126; below that, next to nothing. */
@inline
export function exp2(exponent: v128): v128 {
  const x = f32x4.pmax(exponent, f32x4.splat(-126))
  const shifted = f32x4.add(x, f32x4.splat(TO_WHOLE))
  const f = f32x4.sub(x, f32x4.sub(shifted, f32x4.splat(TO_WHOLE)))
  // Taylor's series of exp(f ln 2), |f| <= 1/2
  let p = f32x4.add(f32x4.splat(1.5403530393381609e-4), f32x4.mul(f, f32x4.splat(1.5252733804059841e-5)))
  p = f32x4.add(f32x4.splat(1.3333558146428443e-3), f32x4.mul(f, p))
  p = f32x4.add(f32x4.splat(9.6181291076284772e-3), f32x4.mul(f, p))
  p = f32x4.add(f32x4.splat(5.5504108664821580e-2), f32x4.mul(f, p))
  p = f32x4.add(f32x4.splat(2.4022650695910072e-1), f32x4.mul(f, p))
  p = f32x4.add(f32x4.splat(6.9314718055994531e-1), f32x4.mul(f, p))
  p = f32x4.add(f32x4.splat(1), f32x4.mul(f, p))
  return i32x4.add(p, i32x4.shl(shifted, 23))
}

/** ln x for normal x above 0. */
@inline
export function ln(x: v128): v128 {
  // x = m 2^e with m from 1/√2 to √2
  const e = i32x4.shr_s(i32x4.sub(x, i32x4.splat(0x3f3504f3)), 23)
  const m = i32x4.sub(x, i32x4.shl(e, 23))
  const f = f32x4.sub(m, f32x4.splat(1))
  const s = f32x4.div(f, f32x4.add(f32x4.splat(2), f))
  const z = f32x4.mul(s, s)
  // ln m = 2 artanh s
  let p = f32x4.add(f32x4.splat(2.0 / 7.0), f32x4.mul(z, f32x4.splat(2.0 / 9.0)))
  p = f32x4.add(f32x4.splat(2.0 / 5.0), f32x4.mul(z, p))
  p = f32x4.add(f32x4.splat(2.0 / 3.0), f32x4.mul(z, p))
  p = f32x4.add(f32x4.splat(2), f32x4.mul(z, p))
  return f32x4.add(f32x4.mul(f32x4.convert_i32x4_s(e), f32x4.splat(0.69314718055994531)), f32x4.mul(s, p))
}

/** Where the mask is all ones the first, else the second. */
@inline
export function pick(mask: v128, a: v128, b: v128): v128 {
  return v128.bitselect(a, b, mask)
}
