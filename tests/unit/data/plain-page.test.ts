import { describe, expect, it } from 'vitest'
import { plainPage } from '../../../lib/data/plain-page.mjs'

describe('a page that needs nothing of the app', () => {
  it('says what is so and comes again by itself, or leads to the shoots', () => {
    const waits = plainPage('Emberslate is starting.', 'What was saved is safe.', 5)
    expect(waits).toContain('<h1 style="font-size:2.125rem;line-height:1.12">Emberslate is starting.</h1>')
    expect(waits).toContain('http-equiv="refresh" content="5"')
    expect(waits).toMatch(/every 5 seconds\.<\/p><p><a href=""/)
    expect(plainPage('This does not open.', 'Wrong name.')).toContain('<a href="/"')
  })
  it('holds nothing that the policy of its answer refuses, and takes no words for markup', () => {
    const page = plainPage('A', '<script>"x"&')
    expect(page).toContain('&#60;script&#62;&#34;x&#34;&#38;')
    expect(page).not.toMatch(/<(style|script|link)|\son\w+=/)
  })
})
