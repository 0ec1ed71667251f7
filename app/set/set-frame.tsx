import { type ReactNode, Suspense } from 'react'
import type { Problem } from '@/lib/refusals'
import { NoLayout } from '../shoots/[shootId]/no-layout'
import { layingOut } from '../words/working'
import { type OpenShoot, savedShoot } from '../workbench'
import type { LiveSetProps } from './live-set'
import { loadSet, type SetPage } from './load-set'
import { Opening } from './opening'

export type LoadedSet = SetPage & { readonly ok: true }
export interface FrameProps {
  readonly shootId: string
  readonly children: (live: LiveSetProps, set: LoadedSet) => ReactNode
}
export const liveOf = (shootId: string, { opening, facts, units }: LoadedSet) => ({ shootId, opening, facts, units })
export const workOn = ({ shoot: { shots = [], people = [] } }: OpenShoot) => layingOut(shots.length, people.length)

/** A screen of the set that fills the page; or why there is no day to show. */
export async function SetScreen(props: FrameProps) {
  const saved = await savedShoot(props.shootId)
  return (
    <Suspense fallback={<Opening title={saved.shoot.title} what={workOn(saved)} />}>
      <Loaded {...props} />
    </Suspense>
  )
}

async function Loaded({ shootId, children }: FrameProps) {
  const set = await loadSet(shootId)
  return set.ok ? (
    children(liveOf(shootId, set), set)
  ) : (
    <NoDay id={shootId} title={set.open.shoot.title} problems={set.problems} />
  )
}

interface NoDayProps {
  readonly id: string
  readonly title: string
  readonly problems: readonly Problem[]
}
export const NoDay = ({ id, title, problems }: NoDayProps) => (
  <main id="main" className="page">
    <h1>{title}</h1>
    <NoLayout id={id} problems={problems} />
  </main>
)
