import { describe, expect, it } from 'vitest'
import { askedFor, onlyHealth } from '../../../lib/cli/role.mjs'

const SHARED = { DATABASE_URL: 'postgresql://127.0.0.1/set' }

describe('what a process is started for', () => {
  it.each([
    [[], {}, { crew: false, proxied: false, role: 'all' }],
    [['--crew'], { EMBERSLATE_PROXY: '1' }, { crew: true, proxied: true, role: 'all' }],
    [['--worker'], SHARED, { crew: false, proxied: false, role: 'worker' }],
    [['--crew', '--pages'], { ...SHARED, EMBERSLATE_PROXY: '1' }, { crew: true, proxied: true, role: 'pages' }],
  ])('is read from %j', (words, env, asked) => {
    expect(askedFor(words, env)).toEqual(asked)
  })
  it.each([
    [['--worker'], {}, /Set DATABASE_URL/],
    [['--pages'], { DATABASE_URL: ' ' }, /Set DATABASE_URL/],
    [['--worker', '--crew'], SHARED, /Write it alone/],
    [['--crew'], SHARED, /through a reverse proxy/],
    [['--hands'], SHARED, /"--hands" is not known here/],
  ])('is refused in a sentence where %j does not go together', (words, env, sentence) => {
    expect(() => askedFor(words, env)).toThrow(sentence)
  })
  it('a worker answers how it is, and nothing else', () => {
    const answered: (string | number)[] = []
    const response = { writeHead: (status: number) => ({ end: () => answered.push(status) }) }
    const handle = onlyHealth(({ url }: { url: string }) => answered.push(url))
    for (const url of ['/healthz', '/readyz?x=1', '/', '/shoots/1', '/healthz/../shoots', '//readyz'])
      handle({ url }, response)
    expect(answered).toEqual(['/healthz', '/readyz?x=1', 404, 404, 404, 404])
  })
})
