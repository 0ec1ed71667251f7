import { Suspense } from 'react'
import { NoLayout } from '../shoots/[shootId]/no-layout'
import type { HelpPage } from '../ui/help-link'
import { ShootHead } from '../ui/shoot-head'
import { chosenUnits } from '../units'
import { savedShoot } from '../workbench'
import { loadSet } from './load-set'
import { OpeningLine } from './opening'
import { type FrameProps, liveOf, workOn } from './set-frame'

/**
 * A page of the set for a laptop, under the head that every page of a shoot has. Its own file: what that head weighs is
 * not for the phones.
 */
export async function SetDesk({ help, ...props }: FrameProps & { readonly help?: HelpPage }) {
  const saved = await savedShoot(props.shootId)
  return (
    <main id="main" className="page">
      <ShootHead open={saved} units={await chosenUnits()} page="set" help={help} />
      <Suspense fallback={<OpeningLine what={workOn(saved)} />}>
        <Loaded {...props} />
      </Suspense>
    </main>
  )
}

async function Loaded({ shootId, children }: FrameProps) {
  const set = await loadSet(shootId)
  return set.ok ? children(liveOf(shootId, set), set) : <NoLayout id={shootId} problems={set.problems} />
}
