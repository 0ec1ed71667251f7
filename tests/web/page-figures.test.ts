import { beforeAll, describe, expect, it } from 'vitest'
import { ownScriptKb, scriptsOf } from '../../lib/cli/own-script'
import { everyPage } from './every-page'
import { readyApp } from './server'

/** kB gzip above an empty page of the same build. Times and shifts are printed by `npm run figures`. */
const PAGE_KB = 60
const BOARD_KB = 45
/** What a thumb or a presenter holds. */
const BOARD = /\/set(\/presenter)?$/

const app = readyApp()
let pages: readonly string[]
beforeAll(async () => {
  pages = await everyPage(app.address)
})

describe('every page', () => {
  it('brings at most 60 kB of script of its own, the set board 45', { timeout: 60_000 }, async () => {
    const own = await ownScriptKb(app.address, pages)
    expect(own.size).toBe(pages.length)
    expect(pages.filter((page) => BOARD.test(page) && (own.get(page) ?? 0) > 1)).toHaveLength(2)
    const tooMuch = [...own].filter(([page, kb]) => kb > (BOARD.test(page) ? BOARD_KB : PAGE_KB))
    expect(tooMuch).toEqual([])
  })

  it('comes without the schema library', { timeout: 60_000 }, async () => {
    const scripts = new Set<string>()
    for (const page of pages) for (const script of await scriptsOf(app.address, page)) scripts.add(script)
    const withIt: string[] = []
    for (const script of scripts) if ((await (await fetch(script)).text()).includes('invalid_type')) withIt.push(script)
    expect(scripts.size).toBeGreaterThan(pages.length)
    expect(withIt).toEqual([])
  })
})
