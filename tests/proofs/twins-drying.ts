import { proveFamily } from '../twins/prove-family'

/** Re-forecasts of five hundred made-up cooks whose truth is another surface law, uneven heat, bone and a biased cooker. */
export const prove = ({ seed }: { readonly seed: number }) => proveFamily('B', seed)
