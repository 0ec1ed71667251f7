/** Seeded chance: the same seed and stream give the same numbers, whatever else was drawn. */
export interface Chance {
  /** Uniform in [0, 1). */
  readonly uniform: () => number
  /** Standard normal. */
  readonly normal: () => number
}

/** One round of an avalanche hash on 32 bits; neighbouring seeds come out unrelated. */
function scramble(n: number) {
  let h = (n + 0x9e3779b9) | 0
  h = Math.imul(h ^ (h >>> 16), 0x21f0aaad)
  h = Math.imul(h ^ (h >>> 15), 0x735a2d97)
  return h ^ (h >>> 15)
}

/** Chance of its own for a (seed, member, stream): a small counter generator of 128 bits of state. */
export function chanceOf(seed: number, member: number, stream: number): Chance {
  let a = scramble(seed)
  let b = scramble(a ^ member)
  let c = scramble(b ^ stream)
  let counter = 1
  const bits = () => {
    const sum = (((a + b) | 0) + counter) | 0
    counter = (counter + 1) | 0
    a = b ^ (b >>> 9)
    b = (c + (c << 3)) | 0
    c = (c << 21) | (c >>> 11)
    c = (c + sum) | 0
    return sum >>> 0
  }
  for (let i = 0; i < 12; i++) bits()
  const uniform = () => bits() / 4294967296
  let spare: number | undefined
  const normal = () => {
    if (spare !== undefined) {
      const kept = spare
      spare = undefined
      return kept
    }
    const radius = Math.sqrt(-2 * Math.log(1 - uniform()))
    const angle = 2 * Math.PI * uniform()
    spare = radius * Math.sin(angle)
    return radius * Math.cos(angle)
  }
  return { uniform, normal }
}
