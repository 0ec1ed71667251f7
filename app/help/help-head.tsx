import Link from 'next/link'
import { help } from '../words/help-link'
import { allShoots, shoots } from '../words/shared'

/** The head of the help pages; `under`: a page beneath the first. */
export const HelpHead = ({ under }: { under: boolean }) => (
  <header className="head">
    <Link href="/" className="small" aria-label={allShoots}>
      {shoots}
    </Link>
    {under ? (
      <Link className="name" href="/help">
        {help}
      </Link>
    ) : (
      <span className="name">{help}</span>
    )}
  </header>
)
