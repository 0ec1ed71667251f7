import { proveFamily } from '../twins/prove-family'

/** Re-forecasts of five hundred made-up cooks whose truth is the solid model with other parameters. */
export const prove = ({ seed }: { readonly seed: number }) => proveFamily('A', seed)
