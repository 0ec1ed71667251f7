/** The assembled kernel at work: one instance in each thread, its memory seen as numbers. */
import { BYTES_BASE64 } from './bytes'

export interface Kernel {
  readonly f32: Float32Array
  readonly f64: Float64Array
  readonly i32: Int32Array
  /** Marches the lanes until one of them needs its script; the lanes that do, as bits. */
  readonly advance: () => number
  /** The machine's own pace, for the bench: 96 flops a round. */
  readonly multiplyAdd: (rounds: number) => number
}

const bytes = () => Uint8Array.from(atob(BYTES_BASE64), (letter) => letter.charCodeAt(0))

/** Whether this browser or server has WebAssembly with vectors of 128 bits. */
let there: boolean | undefined
export function hasSimd(): boolean {
  there ??= typeof WebAssembly === 'object' && WebAssembly.validate(bytes())
  return there
}

let kept: Kernel | undefined
export function kernel(): Kernel {
  kept ??= instance()
  return kept
}

function instance(): Kernel {
  const { exports } = new WebAssembly.Instance(new WebAssembly.Module(bytes()))
  const { buffer } = exports.memory as WebAssembly.Memory
  // What assembled bytes export has no types.
  const { advance, multiplyAdd } = exports as unknown as Pick<Kernel, 'advance' | 'multiplyAdd'>
  return {
    f32: new Float32Array(buffer),
    f64: new Float64Array(buffer),
    i32: new Int32Array(buffer),
    advance,
    multiplyAdd,
  }
}
