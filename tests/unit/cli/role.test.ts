import { describe, expect, it } from 'vitest'
import { askedFor } from '../../../lib/cli/role.mjs'

const SERVER = { DATABASE_URL: 'postgresql://127.0.0.1/shoots' }

describe('what a process is started for', () => {
  it('is everything, pages alone or work alone, with the crew or without', () => {
    expect(askedFor([], {})).toEqual({ crew: false, proxied: false, role: 'all' })
    expect(askedFor(['--crew'], {})).toEqual({ crew: true, proxied: false, role: 'all' })
    const proxied = { ...SERVER, EMBERSLATE_PROXY: '1' }
    expect(askedFor(['--crew', '--pages'], proxied)).toEqual({ crew: true, proxied: true, role: 'pages' })
    expect(askedFor(['--worker'], SERVER).role).toBe('worker')
  })
  it('is refused in a sentence that says the way on where the words do not go together', () => {
    expect(() => askedFor(['--crwe'], {})).toThrow('"--crwe" is not known here')
    expect(() => askedFor(['--worker', '--crew'], SERVER)).toThrow('npm start -- --worker')
    expect(() => askedFor(['--worker'], {})).toThrow('Set DATABASE_URL')
    expect(() => askedFor(['--pages'], {})).toThrow('leave --pages off')
    // The certificate of the set is a file of the folder, which a server does not have.
    expect(() => askedFor(['--crew'], SERVER)).toThrow(/reverse proxy.*EMBERSLATE_PROXY=1.*leave DATABASE_URL off/)
  })
})
