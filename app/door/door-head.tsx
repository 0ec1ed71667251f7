import Link from 'next/link'
import { allShoots, shoots } from '../words/door'

/** The head of a page that belongs to no shoot. */
export const DoorHead = ({ name }: { name: string }) => (
  <header className="head">
    <Link href="/" className="small" aria-label={allShoots}>
      {shoots}
    </Link>
    <span className="name">{name}</span>
  </header>
)
