export const LINE: {
  readonly requestTimeout: number
  readonly headersTimeout: number
  readonly connectionsCheckingInterval: number
}
