/**
 * Arithmetic of one accepted step of one lane, counted in the kernel's source (assembly/): additions, multiplications,
 * divisions, least and greatest, floors; no comparisons, masks, loads or shuffles.
 */
/** A node: up 25, down 5, up again 11, down again 8, and 35 for what the step leaves behind. */
const PER_NODE = 25 + 5 + 11 + 8 + 35
/** The skin's law at both ends of the step, and the water between. */
const PER_SKIN = 2 * 147 + 16

export const flopsPerStep = (nodes: number) => nodes * PER_NODE + PER_SKIN
/** A round of the kernel's own `multiplyAdd`: 12 of 4 numbers each. */
export const FLOPS_PER_ROUND = 12 * 4 * 2
