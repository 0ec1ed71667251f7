export interface Asked {
  readonly crew: boolean
  readonly proxied: boolean
  readonly role: 'all' | 'pages' | 'worker'
}
export function askedFor(words: readonly string[], env?: Readonly<Record<string, string | undefined>>): Asked
type Handle<Request, Response> = (request: Request, response: Response) => unknown
interface Answer {
  writeHead(status: number, headers: Readonly<Record<string, string>>): { end(words: string): unknown }
}
export function onlyHealth<Request extends { url?: string }, Response extends Answer>(
  handle: Handle<Request, Response>,
): Handle<Request, Response>
