import { proveFamily } from '../../twins/prove-family'

const KNOWN_MISSES: readonly string[] = []

/** Re-forecasts of five hundred made-up cooks whose truth is another surface law, uneven heat, bone and a biased cooker. */
export const prove = ({ seed }: { readonly seed: number }) => proveFamily('B', seed, KNOWN_MISSES)
