import 'server-only'
import { headers } from 'next/headers'
import { visitorOf } from '@/lib/data/door/visitor'
import { loadLog } from '@/lib/data/load-log'
import type { Layout } from '@/lib/day/layout'
import type { EntryDocument } from '@/lib/log/entry'
import { fastestKernel } from '@/lib/model/kernels'
import type { Shoot } from '@/lib/plan/shoot'
import { madeUpDay } from '@/lib/session/rehearsal'
import { remembered } from '../../remembered'
import { forecastsBehind, seedOf } from '../../worked-out'
import { loadSet, type SetPage } from '../load-set'

/** Which day is played: an invented one, or the one that the log tells. */
export type DayPlayed = 'made-up' | 'logged'
export type RehearsalPage =
  | Exclude<SetPage, { ok: true }>
  | (Extract<SetPage, { ok: true }> & {
      readonly timeline: readonly EntryDocument[]
      readonly played: DayPlayed
      /** The log tells of a cook, so that its day can be played. */
      readonly hasLog: boolean
      readonly crewSeed: number
      /** Who sits at this screen: by their sign-in, else the cook. */
      readonly person: string | null
    })

export async function loadRehearsal(shootId: string, asked: DayPlayed): Promise<RehearsalPage> {
  const set = await loadSet(shootId)
  if (!set.ok) return set
  const { shoot } = set.open
  const log = (await loadLog(shootId, 0)).map(({ document }) => document as EntryDocument)
  const hasLog = log.some(({ kind }) => kind === 'mark' || kind === 'reading')
  const played = asked === 'logged' && hasLog ? asked : 'made-up'
  return {
    ...set,
    // No forecast of the real day, nor where it stands, is part of one that is played.
    opening: { ...set.opening, forecast: null, state: null },
    timeline: played === 'logged' ? log : madeUp(shoot, set.layout),
    played,
    hasLog,
    crewSeed: seedOf(shoot),
    person: await personHere(shootId, shoot),
  }
}

const madeUp = remembered(8, (shoot: Shoot, layout: Layout) =>
  madeUpDay({
    shoot,
    layout,
    forecasts: forecastsBehind(shoot, layout),
    seed: seedOf(shoot),
    kernel: fastestKernel(),
  }),
)

async function personHere(shootId: string, { people = [] }: Shoot): Promise<string | null> {
  const { grants } = await visitorOf(await headers())
  const signedIn = grants.find(({ shoot, person }) => shoot === shootId && person !== null)?.person
  return signedIn ?? (people.find(({ roles }) => roles.includes('cook')) ?? people[0])?.id ?? null
}
