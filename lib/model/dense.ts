/** Small dense matrices, row by row: what the fit of readings needs of linear algebra. */

/** Lower triangle L of a positive definite matrix, L Lᵀ = A. */
export function cholesky(a: Float64Array, n: number): Float64Array {
  const l = new Float64Array(n * n)
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = a[i * n + j] as number
      for (let k = 0; k < j; k++) sum -= (l[i * n + k] as number) * (l[j * n + k] as number)
      if (i !== j) l[i * n + j] = sum / (l[j * n + j] as number)
      else if (sum > 0) l[i * n + i] = Math.sqrt(sum)
      else throw new RangeError('the matrix is not positive definite')
    }
  }
  return l
}
/** x with L x = b. */
export function forward(l: Float64Array, n: number, b: Float64Array): Float64Array {
  const x = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    let sum = b[i] as number
    for (let k = 0; k < i; k++) sum -= (l[i * n + k] as number) * (x[k] as number)
    x[i] = sum / (l[i * n + i] as number)
  }
  return x
}
/** x with Lᵀ x = b. */
export function backward(l: Float64Array, n: number, b: Float64Array): Float64Array {
  const x = new Float64Array(n)
  for (let i = n - 1; i >= 0; i--) {
    let sum = b[i] as number
    for (let k = i + 1; k < n; k++) sum -= (l[k * n + i] as number) * (x[k] as number)
    x[i] = sum / (l[i * n + i] as number)
  }
  return x
}
export const solve = (l: Float64Array, n: number, b: Float64Array) => backward(l, n, forward(l, n, b))
export const dot = (a: ArrayLike<number>, b: ArrayLike<number>) => {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number)
  return sum
}

const SWEEPS = 12
/** Eigenvalues of a symmetric matrix, and its eigenvectors as columns, by Jacobi's rotations. */
export function eigen(matrix: Float64Array, n: number): { values: Float64Array; vectors: Float64Array } {
  const a = matrix.slice()
  const v = new Float64Array(n * n)
  for (let i = 0; i < n; i++) v[i * n + i] = 1
  for (let sweep = 0; sweep < SWEEPS; sweep++)
    for (let p = 0; p < n; p++) for (let q = p + 1; q < n; q++) rotate(a, v, n, p, q)
  return { values: Float64Array.from({ length: n }, (_, i) => a[i * n + i] as number), vectors: v }
}
function rotate(a: Float64Array, v: Float64Array, n: number, p: number, q: number) {
  const off = a[p * n + q] as number
  if (Math.abs(off) < 1e-14) return
  const theta = ((a[q * n + q] as number) - (a[p * n + p] as number)) / (2 * off)
  const t = Math.sign(theta || 1) / (Math.abs(theta) + Math.hypot(theta, 1))
  const c = 1 / Math.hypot(t, 1)
  const s = t * c
  const turn = (m: Float64Array, i: number, j: number) => {
    const x = m[i] as number
    const y = m[j] as number
    m[i] = c * x - s * y
    m[j] = s * x + c * y
  }
  for (let k = 0; k < n; k++) turn(a, k * n + p, k * n + q)
  for (let k = 0; k < n; k++) turn(a, p * n + k, q * n + k)
  for (let k = 0; k < n; k++) turn(v, k * n + p, k * n + q)
}

/** (I + A)^(-1/2) of a symmetric A with no negative eigenvalue: I where A is 0. */
export function inverseRootOnePlus(a: Float64Array, n: number): Float64Array {
  const { values, vectors } = eigen(a, n)
  const root = new Float64Array(n * n)
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++)
      for (let k = 0; k < n; k++)
        root[i * n + j] =
          (root[i * n + j] as number) +
          ((vectors[i * n + k] as number) * (vectors[j * n + k] as number)) /
            Math.sqrt(1 + Math.max(0, values[k] as number))
  return root
}
export function times(a: Float64Array, n: number, x: Float64Array): Float64Array {
  return Float64Array.from({ length: n }, (_, i) => dot(a.subarray(i * n, i * n + n), x))
}
