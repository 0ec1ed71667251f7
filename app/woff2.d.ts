/** A file of letters, as the address it is served at. */
declare module '*.woff2' {
  const address: string
  export default address
}
