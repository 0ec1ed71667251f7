'use client'
import dynamic from 'next/dynamic'
import { openingRehearsal } from '../../words/rehearsal'
import type { RehearsalProps } from './rehearsal-here'

/** Its script comes with its own page only, and is drawn in the browser. */
const RehearsalHere = dynamic(() => import('./rehearsal-here'), {
  ssr: false,
  loading: () => (
    <main id="main" className="set">
      <p className="do">{openingRehearsal}</p>
    </main>
  ),
})

export const RehearsalScreen = (props: RehearsalProps) => <RehearsalHere {...props} />
