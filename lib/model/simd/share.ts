/** What all lanes share, written into the kernel's memory: the kernel holds forms of laws, the numbers are the model's. */
import { GAMMA, NODES } from '../conduction'
import { HELD, MATTER_COLUMNS } from '../meat'
import { LEAST_STEP_S, SAMPLE_S, type Setting, SKIN_ERROR_K, SLOW_AFTER_S } from '../simulate'
import { KELVIN, LATENT_JPKG, tangentOf } from '../surface'
import { ANTOINE, boilingC } from '../vapour'
import { CAPACITY_FLOOR, CAPACITY_PER_JUICE, CONDUCTION_PER_JUICE, JUICE_TIME_S } from '../yield'
import type { Kernel } from './kernel'
import * as at from './layout'

export function share(kernel: Kernel, setting: Setting) {
  const { f32, f64, i32 } = kernel
  const nodes = setting.nodes ?? NODES
  if (nodes > at.MOST_NODES) throw new RangeError(`the kernel holds ${at.MOST_NODES} nodes, not ${nodes}`)
  const set = (place: number, value: number) => {
    f32[place >> 2] = value
  }
  const tangent = tangentOf(setting.pressurePa)
  set(at.GAMMA, GAMMA)
  set(at.JUICE_RATE_PS, 1 / JUICE_TIME_S)
  set(at.CAPACITY_PER_JUICE, CAPACITY_PER_JUICE)
  set(at.CONDUCTION_PER_JUICE, CONDUCTION_PER_JUICE)
  set(at.CAPACITY_FLOOR, CAPACITY_FLOOR)
  set(at.HELD_MORE, HELD - 1)
  set(at.LATENT_JPKG, LATENT_JPKG)
  set(at.PRESSURE_PA, setting.pressurePa)
  set(at.TANGENT_C, tangent.tangentC)
  set(at.TANGENT_SLOPE_PK, tangent.tangentSlope)
  set(at.BOILING_C, boilingC(setting.pressurePa))
  set(at.SATURATION_A, Math.log2(ANTOINE.paPerMmhg) + ANTOINE.a * Math.log2(10))
  set(at.SATURATION_B, ANTOINE.b * Math.log2(10))
  set(at.SATURATION_C, ANTOINE.c)
  set(at.SATURATION_SLOPE, ANTOINE.b * Math.LN10)
  set(at.KELVIN, KELVIN)
  set(at.RHO_KGPM3, setting.matter.rhoKgpM3)
  set(at.ONE, 1)
  set(at.WHOLE, 2 ** 23)
  f64[at.SKIN_ERROR_K >> 3] = SKIN_ERROR_K
  f64[at.LEAST_STEP_S >> 3] = LEAST_STEP_S
  f64[at.SLOW_AFTER_S >> 3] = SLOW_AFTER_S
  f64[at.SAMPLE_S >> 3] = SAMPLE_S
  i32[at.COUNT >> 2] = nodes
  for (let lane = 0; lane < at.LANES; lane++) i32[(at.MODE >> 2) + lane] = at.IDLE
  shareMatter(kernel, setting)
}

function shareMatter({ f32 }: Kernel, { matter }: Setting) {
  const { fromC, rows, columns } = matter
  if (rows > at.MOST_ROWS) throw new RangeError(`the kernel holds ${at.MOST_ROWS} degrees of a material, not ${rows}`)
  f32[at.TABLE_FROM_C >> 2] = fromC
  f32[at.TABLE_LAST >> 2] = rows - 1.001
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < MATTER_COLUMNS; column++) {
      const place = (at.TABLE_AT + row * at.TABLE_ROW) >> 2
      const here = columns[MATTER_COLUMNS * row + column] as number
      const next = columns[MATTER_COLUMNS * Math.min(rows - 1, row + 1) + column] as number
      f32[place + column] = here
      f32[place + MATTER_COLUMNS + column] = next - here
    }
}
