/** A page that needs nothing of the app: while it starts, or while it cannot answer. Plain Node: the start command says it. */

const escaped = (text) => text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`)

/** What such a page may do where no other policy is said: show its styles, which are attributes. */
export const PLAIN_POLICY =
  "default-src 'none'; style-src-attr 'unsafe-inline'; base-uri 'none'; frame-ancestors 'none'"

// The colours are --paper and --ink, of the day and of the dusk.
const BODY =
  'margin:0;background:light-dark(#fbf8f1,#12100e);color:light-dark(#1d1814,#f6efe3);font:450 1.1875rem/1.45 Georgia,serif'
const MAIN = 'max-width:40rem;margin:0 auto;padding:1rem 1.5rem'
const NAME = 'border-bottom:2.25px solid;padding-bottom:8px;margin:0 0 1.5rem;font-weight:600'
const LINK = 'color:inherit;display:inline-block;padding:12px 0'

/** One sentence, and a way on. `againS`: the page comes again by itself after so many seconds. */
export function plainPage(title, sentence, againS) {
  const again = againS ? `<meta http-equiv="refresh" content="${againS}">` : ''
  const itself = againS ? ` This page tries again by itself every ${againS} seconds.` : ''
  const on = againS ? '<a href="" style="STYLE">Try now</a>' : '<a href="/" style="STYLE">To the shoots</a>'
  return [
    '<!doctype html><html lang="en"><head><meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width"><meta name="color-scheme" content="light dark">',
    `${again}<title>${escaped(title)} · Emberslate</title></head>`,
    `<body style="${BODY}"><main style="${MAIN}"><p style="${NAME}">Emberslate</p>`,
    `<h1 style="font-size:2.125rem;line-height:1.12">${escaped(title)}</h1>`,
    `<p>${escaped(sentence)}${itself}</p><p>${on.replace('STYLE', LINK)}</p></main></body></html>`,
  ].join('\n')
}
