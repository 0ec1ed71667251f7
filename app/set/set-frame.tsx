import type { ReactNode } from 'react'
import type { Problem } from '@/lib/refusals'
import { NoLayout } from '../shoots/[shootId]/no-layout'
import type { LiveSetProps } from './live-set'
import { loadSet, type SetPage } from './load-set'

export type LoadedSet = SetPage & { readonly ok: true }
export interface FrameProps {
  readonly shootId: string
  readonly children: (live: LiveSetProps, set: LoadedSet) => ReactNode
}
export const liveOf = (shootId: string, { opening, facts, units }: LoadedSet) => ({ shootId, opening, facts, units })

/** A screen of the set that fills the page; or why there is no day to show. */
export async function SetScreen({ shootId, children }: FrameProps) {
  const set = await loadSet(shootId)
  return set.ok ? children(liveOf(shootId, set), set) : <NoDay title={set.open.shoot.title} problems={set.problems} />
}

export function NoDay({ title, problems }: { readonly title: string; readonly problems: readonly Problem[] }) {
  return (
    <main id="main" className="page">
      <h1>{title}</h1>
      <NoLayout problems={problems} />
    </main>
  )
}
