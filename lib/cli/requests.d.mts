import type { IncomingMessage, ServerResponse } from 'node:http'

type Answer = (request: IncomingMessage, response: ServerResponse) => void
export function numbered(
  request: IncomingMessage,
  response: ServerResponse,
  how: { readonly proxied: boolean; readonly answer: Answer },
): void
export function tellRefused(): void
