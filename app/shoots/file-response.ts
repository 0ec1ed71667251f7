/** Shown in the browser; saved under the shoot's own name, letters outside ASCII by RFC 8187. */
export function fileResponse(body: BodyInit, { name, type }: { name: string; type: string }): Response {
  const ascii = name
    .normalize('NFKD')
    .replace(/[^\x20-\x7e]/g, '')
    .replace(/["\\/]/g, '')
  return new Response(body, {
    headers: {
      'content-type': type,
      'content-disposition': `inline; filename="${ascii}"; filename*=UTF-8''${encodeURIComponent(name)}`,
      'cache-control': 'no-store',
    },
  })
}
