import Link from 'next/link'

/** The head of a page that belongs to no shoot. */
export const DoorHead = ({ name }: { name: string }) => (
  <header className="head">
    <Link href="/" className="small" aria-label="All shoots">
      Shoots
    </Link>
    <span className="name">{name}</span>
  </header>
)
