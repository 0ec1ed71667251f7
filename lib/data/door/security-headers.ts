/** What every answer says to the browser besides its content. */
const ALWAYS: Readonly<Record<string, string>> = {
  'x-content-type-options': 'nosniff',
  // Within the app a browser may say where it comes from; elsewhere not a word, since addresses name shoots.
  'referrer-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(self), microphone=(), geolocation=(), payment=(), usb=(), serial=()',
}

/**
 * What a page may load and run: its own files, and of inline scripts those alone that carry this answer's nonce.
 * Files of the program carry none: a worker runs by the policy of its own file, and loads only from here.
 * The forecast in the browser is WebAssembly. Places drawn from figures are style attributes; no style sheet is inline.
 * The development server needs eval and sockets of its own.
 */
export function contentPolicy(nonce: string | null, development: boolean): string {
  const own = nonce === null ? '' : ` 'nonce-${nonce}'`
  return [
    `default-src 'self'`,
    `script-src 'self'${own && `${own} 'strict-dynamic'`} 'wasm-unsafe-eval'${development ? " 'unsafe-eval'" : ''}`,
    `worker-src 'self' blob:`,
    development ? `style-src 'self' 'unsafe-inline'` : `style-src 'self'${own}`,
    `style-src-attr 'unsafe-inline'`,
    `img-src 'self' blob: data:`,
    `media-src 'self' blob: data:`,
    `connect-src 'self'${development ? ' ws: wss:' : ''}`,
    `object-src 'none'`,
    `base-uri 'none'`,
    `form-action 'self'`,
    `frame-ancestors 'none'`,
  ].join('; ')
}

export function addSecurityHeaders(headers: Headers, policy: string): void {
  for (const [name, value] of Object.entries(ALWAYS)) headers.set(name, value)
  headers.set('content-security-policy', policy)
}
