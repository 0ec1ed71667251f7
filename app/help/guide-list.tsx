import Link from 'next/link'
import type { Guide } from '../words/guides/guide'
import { stepsIn } from '../words/help'

/** Guides to choose from, each with what it gives. */
export const GuideList = ({ guides }: { guides: readonly Guide[] }) => (
  <ul className="guide-list">
    {guides.map((guide) => (
      <li key={guide.id}>
        <Link href={`/help/${guide.id}`}>{guide.title}</Link>
        <span>{guide.gives}</span>
        <span className="win">{stepsIn(guide)}</span>
      </li>
    ))}
  </ul>
)
