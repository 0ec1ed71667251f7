import { Working } from '../ui/working'
import { loadItAgain, stillNotOpen } from '../words/set'

/** What a screen of the set waits for, and after ten seconds what to do. */
export const OpeningLine = ({ what }: { readonly what: string }) => (
  <Working
    what={what}
    lasts={
      <>
        {stillNotOpen}
        <br />
        {/* biome-ignore lint/a11y/useValidAnchor: the empty address is this page's own, and works before any script has come. */}
        <a className="textlink" href="">
          {loadItAgain}
        </a>
      </>
    }
  />
)

/** The same where the screen fills the page. */
export const Opening = ({ title, what }: { readonly title: string; readonly what: string }) => (
  <main id="main" className="set">
    <h1 className="next">{title}</h1>
    <OpeningLine what={what} />
  </main>
)
