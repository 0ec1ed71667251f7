import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import ErrorPage from '../../app/error'

const pageOf = (digest?: string) =>
  renderToStaticMarkup(<ErrorPage error={Object.assign(new Error('x'), { digest })} retry={() => {}} />)

describe('the page of a fault', () => {
  it('says of a shoot of another version that nothing is lost, and offers its file; of any other fault to try again', () => {
    expect(pageOf('shoot-unreadable/0a1b')).toContain('saved by another version of Emberslate')
    expect(pageOf('shoot-unreadable/0a1b')).toContain('href="/api/shoots/0a1b/export"')
    expect(pageOf()).toContain('Try again')
  })
})
