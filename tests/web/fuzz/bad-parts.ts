import type { Draw } from './draw'

const DOTS = [
  '..',
  '.',
  '%2e%2e',
  '%2E%2e%2f..',
  '..%2f..%2fetc%2fpasswd',
  '..%5c..%5c',
  '%00',
  'a%00b',
  '%',
  '%zz',
  '%e0%a4%a',
]
const STRANGE = [
  '%ed%a0%80',
  '%c0%ae%c0%ae',
  '%f0%9f%94%a5',
  '%e2%80%ae',
  '%e2%80%8b',
  'e%cc%81',
  '__proto__',
  'constructor',
  'toString',
]
const ODD = [
  '\\..\\..\\x',
  '%20',
  ' ',
  '*',
  ';x=1',
  'a;b',
  '%3f',
  '%23',
  '\u00e9',
  '[id]',
  '{id}',
  '%5Bid%5D',
  '-1',
  '1e400',
  'null',
]
const LONG = [
  'x'.repeat(300),
  'x'.repeat(3000),
  'x'.repeat(12_000),
  '%61'.repeat(2000),
  'a/'.repeat(1500),
  '../'.repeat(300),
]
const WHOLE = [
  '//elsewhere.example/x',
  '/\\elsewhere.example',
  'http://elsewhere.example/api/shoots',
  '*',
  '/_next/data/x/y.json',
  '/_next/image?url=%2Fx&w=64&q=75',
]
const FILES = [
  '/_next/static/../../api/shoots',
  '/_next/static/%2e%2e/%2e%2e/server/app',
  '/sw.js/..%2f.env',
  '/.env',
  '/.git/config',
  '/api',
  '/api/',
  '/api/none',
  '/_error',
  '/_not-found',
  '/404',
  '/500',
]

/** An address that is wrong in one place. */
export function badPath(path: string, draw: Draw, wrong: string[]): string {
  const parts = path.split('/')
  const at = 1 + draw.below(parts.length - 1)
  const strange = draw.one(draw.one([DOTS, STRANGE, ODD, LONG]))
  const how = draw.one(['part', 'before', 'after', 'whole', 'slash', 'double', 'case', 'ending'])
  wrong.push(`path ${how}`)
  if (how === 'part') parts[at] = strange
  if (how === 'before') parts.splice(at, 0, strange)
  if (how === 'after') parts.push(strange)
  if (how === 'slash') parts.push('')
  if (how === 'double') parts.splice(at, 0, '')
  if (how === 'case') parts[at] = parts[at]?.toUpperCase() ?? ''
  if (how === 'ending')
    parts[parts.length - 1] += draw.one(['.json', '.rsc', '.txt', '%0d%0ax:y', '~', '.', '.segments/x.segment.rsc'])
  return how === 'whole' ? draw.one([...WHOLE, ...FILES]) : parts.join('/')
}

const KEYS = [
  'from',
  'since',
  'person',
  'shoot',
  'day',
  'clip',
  'size',
  'paper',
  'key',
  'to',
  '__proto__',
  'constructor[x]',
  'a[]',
  '_rsc',
  'nxtPid',
  '%00',
  '',
]
const VALUES = [
  '',
  '-1',
  '1e400',
  'NaN',
  '0x10',
  '9007199254740993',
  '%00',
  '%ed%a0%80',
  '%',
  '%zz',
  '../../x',
  '4096x4096',
  '9999x9999',
  'rehearsed',
  '\\',
  '\u00e9',
  '[]',
  '{"a":1}',
  '%0d%0aset-cookie:x',
  '999999999',
  '1 2',
  '+1',
  'x'.repeat(4000),
]

export function badQuery(query: readonly (readonly [string, string])[], draw: Draw, wrong: string[]): string[] {
  const key = query.length > 0 && draw.chance(0.6) ? draw.one(query)[0] : draw.one(KEYS)
  const value = draw.one(VALUES)
  wrong.push(`?${key}=${value.slice(0, 20)}`)
  const rest = query
    .filter(([name]) => name !== key || draw.chance(0.2))
    .map(([name, one]) => `${name}=${encodeURIComponent(one)}`)
  return [...rest, draw.chance(0.9) ? `${key}=${value.replaceAll(' ', '+')}` : key]
}

const SECRET = 'A'.repeat(22)
const HEADERS: readonly (readonly [string, readonly string[]])[] = [
  [
    'cookie',
    [
      `emberslate=${SECRET}`,
      'emberslate',
      'emberslate=',
      '=;;=',
      `emberslate=%00; emberslate=${SECRET}`,
      `a=${'x'.repeat(5000)}`,
      'units=us; units=__proto__',
      `__Host-emberslate=${SECRET}`,
    ],
  ],
  [
    'authorization',
    ['Bearer', `Bearer ${SECRET}`, 'Bearer \u00e9', 'Basic eDp5', `Bearer ${'x'.repeat(5000)}`, 'bearer  '],
  ],
  ['last-event-id', ['-1', 'x', '1e400', '999999999', '9'.repeat(400), '0 ', '']],
  ['range', ['bytes=0-', 'bytes=-1', 'bytes=5-1', 'bytes=99999999999-', `bytes=${'0-1,'.repeat(500)}`, 'x']],
  ['if-match', ['*', '"x"', 'W/"\u00e9"']],
  ['if-none-match', ['*', '"x"', `"${'x'.repeat(3000)}"`]],
  ['if-modified-since', ['Thu, 01 Jan 1970 00:00:00 GMT', 'x']],
  ['accept', ['text/html', 'image/*', '', '*/*;q=NaN']],
  ['accept-encoding', ['gzip', 'br', 'identity;q=0', '*', 'x'.repeat(200)]],
  ['accept-language', ['x', '*', 'en-'.repeat(400), '../../x']],
  [
    'host',
    ['elsewhere.example', '', '127.0.0.1:99999', '[::1', 'localhost.elsewhere.example', '127.0.0.1@elsewhere.example'],
  ],
  ['origin', ['http://elsewhere.example', 'null', 'http://127.0.0.1:1', '\u00e9']],
  ['sec-fetch-site', ['cross-site', 'same-origin', 'x']],
  ['x-forwarded-for', ['127.0.0.1', '::1', 'x', '1.1.1.1, 127.0.0.1']],
  ['x-forwarded-host', ['elsewhere.example']],
  ['x-forwarded-proto', ['https', 'javascript']],
  ['x-emberslate-peer', ['127.0.0.1']],
  ['x-http-method-override', ['DELETE']],
  [
    'x-middleware-subrequest',
    [
      'middleware:middleware:middleware:middleware:middleware',
      'proxy',
      'src/proxy:src/proxy:src/proxy:src/proxy:src/proxy',
    ],
  ],
  ['x-middleware-rewrite', ['/api/shoots']],
  ['x-middleware-next', ['1']],
  ['x-matched-path', ['/api/shoots']],
  ['x-invoke-path', ['/api/shoots']],
  ['x-invoke-status', ['200', '500']],
  ['x-now-route-matches', ['1=../x']],
  ['x-nextjs-data', ['1']],
  ['x-prerender-revalidate', [SECRET]],
  ['rsc', ['1', 'x']],
  [
    'next-router-state-tree',
    ['x', '%00', '%5B%5D', '%7B', encodeURIComponent(JSON.stringify(['', {}, null, 'refetch'])), 'x'.repeat(6000)],
  ],
  ['next-router-prefetch', ['1', '2', 'x']],
  ['next-router-segment-prefetch', ['/_tree', '/_index', '../x', 'x']],
  ['next-url', ['/api/shoots', '%', '//elsewhere.example']],
  ['next-action', [SECRET, 'x', '0'.repeat(42), '__proto__']],
  ['next-hmr-refresh', ['1']],
  ['content-length', ['-1', '1e3', '0x10', '99999999999999999999']],
  ['content-encoding', ['gzip', 'br', 'x']],
  ['transfer-encoding', ['gzip', 'chunked, chunked', 'x']],
  ['connection', ['upgrade', 'host, cookie']],
  ['upgrade', ['websocket', 'h2c']],
  ['expect', ['x']],
  ['te', ['trailers']],
  ['trailer', ['x']],
  ['traceparent', ['00-0-0-00', 'x']],
  ['x-request-id', ['x'.repeat(3000), '\u0001', '../x']],
  ['x-junk', ['x'.repeat(8000), 'x'.repeat(20_000), '\u00ff\u00fe', 'a\tb']],
  ['__proto__', ['x']],
  ['bad name', ['x']],
  ['', ['x']],
]

export function badHeaders(headers: [string, string][], draw: Draw, wrong: string[]): void {
  if (draw.chance(0.04)) {
    wrong.push('many headers')
    for (let i = 0; i < 300; i++) headers.push([`x-many-${i}`, 'x'])
    return
  }
  for (let i = 0; i <= draw.below(2); i++) {
    const [name, values] = draw.one(HEADERS)
    const value = draw.one(values)
    wrong.push(`${name}: ${value.slice(0, 24)}`)
    const at = headers.findIndex(([one]) => one === name)
    if (at >= 0 && draw.chance(0.7)) headers.splice(at, 1, [name, value])
    else headers.push([name, value])
  }
}
