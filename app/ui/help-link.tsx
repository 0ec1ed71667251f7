import Link from 'next/link'
import { GUIDE_OF, help } from '../words/help-link'

export type HelpPage = keyof typeof GUIDE_OF

/** To the guide that fits the page, or to all of them. */
export const HelpLink = ({ page }: { page?: HelpPage }) => (
  <Link className="textlink no-print ml-auto" href={page ? `/help/${GUIDE_OF[page]}` : '/help'} prefetch={false}>
    {help}
  </Link>
)
