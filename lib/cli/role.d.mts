export interface Asked {
  readonly crew: boolean
  readonly proxied: boolean
  readonly role: 'all' | 'pages' | 'worker'
}
export function askedFor(words: readonly string[], env?: Readonly<Record<string, string | undefined>>): Asked
