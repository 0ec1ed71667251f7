import Link from 'next/link'
import { GUIDE_OF, help } from '../words/help-link'

/** To the guide that fits the page, or to all of them. */
export const HelpLink = ({ page }: { page?: keyof typeof GUIDE_OF }) => (
  <Link className="textlink no-print" href={page ? `/help/${GUIDE_OF[page]}` : '/help'} prefetch={false}>
    {help}
  </Link>
)
