import type { Paper } from '@/lib/print/sheet'

export const paperOf = (request: Request): Paper =>
  new URL(request.url).searchParams.get('paper') === 'Letter' ? 'Letter' : 'A4'

/** Shown in the browser; saved under the shoot's own name, letters outside ASCII by RFC 8187. */
export function pdfResponse(bytes: Uint8Array, name: string): Response {
  const ascii = name
    .normalize('NFKD')
    .replace(/[^\x20-\x7e]/g, '')
    .replace(/["\\/]/g, '')
  return new Response(new Uint8Array(bytes), {
    headers: {
      'content-type': 'application/pdf',
      'content-disposition': `inline; filename="${ascii}.pdf"; filename*=UTF-8''${encodeURIComponent(name)}.pdf`,
      'cache-control': 'no-store',
    },
  })
}
