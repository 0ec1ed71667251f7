import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it, vi } from 'vitest'
import { fetchFile, nameIn } from '../../../app/ui/fetch-file'
import { UndoAt } from '../../../app/ui/undo-line'
import { Working } from '../../../app/ui/working'
import { checkingCard, forecasting, layingOut } from '../../../app/words/working'
import { DEFAULT_MEMBERS } from '../../../lib/model/forecast-cook'

const html = renderToStaticMarkup

describe('the line that says what is being computed', () => {
  it('names the size of the ensemble as it is, and counts in words', () => {
    for (const words of [forecasting, checkingCard]) expect(words).toContain(`${DEFAULT_MEMBERS} cooks`)
    expect(layingOut(1, 2)).toBe('Laying out 1 shot, 2 people')
  })
  it('keeps its place while nothing is computed, and shows a share only where one is known', () => {
    expect(html(<Working what={null} lasts="Load again." />)).toBe('<div role="status" class="working"></div>')
    expect(html(<Working what="A" />)).not.toContain('progress')
    expect(html(<Working what="A" done={0.5} />)).toContain('<progress max="1" value="0.5" aria-label="A">')
  })
})

describe('the line of what was taken out', () => {
  const taken = { last: { words: 'Herbs is taken out.', at: '/shots/3' }, undo: () => {} }
  it('stands at the place it was taken out of and at no other', () => {
    expect(html(<UndoAt taken={taken} at="/shots/3" />)).toMatch(/Herbs is taken out\..*Put it back/)
    expect(html(<UndoAt taken={taken} at="/shots/30" />)).toBe('')
  })
})

describe('the name of a file', () => {
  it('is read from the answer, letters outside ASCII too', () => {
    expect(nameIn(`inline; filename="Kse.pdf"; filename*=UTF-8''K%C3%A4se%20call.pdf`)).toBe('Käse call.pdf')
    expect(nameIn('inline; filename="a.pdf"')).toBe('a.pdf')
    expect(nameIn(null)).toBeNull()
  })
})

describe('a file asked for by somebody who is no longer signed in', () => {
  it('is led to the door, and the door is saved as no file', async () => {
    const assign = vi.fn()
    vi.stubGlobal('window', { location: { assign } })
    const door = new Response('<h1>Who is there?</h1>')
    Object.defineProperties(door, { redirected: { value: true }, url: { value: 'http://set/door' } })
    vi.stubGlobal('fetch', async () => door)
    const saved = vi.fn()
    void fetchFile('/shoots/1/card.pdf').then(saved)
    await vi.waitFor(() => expect(assign).toHaveBeenCalledWith('http://set/door'))
    await door.text()
    expect(saved).not.toHaveBeenCalled()
    vi.unstubAllGlobals()
  })
})
