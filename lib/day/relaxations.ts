import { formatClock } from '../plan/clock'
import type { Shoot, Shot } from '../plan/shoot'
import { formatDuration, later, minutes, seconds } from '../units'
import type { DayForecast } from './day-forecast'
import type { FloatJob } from './float-job'
import type { DocumentEdit } from './layout'
import type { MomentJob } from './moment-job'
import { type DayProblem, dayProblem } from './problem'
import { savingPrice } from './saving-price'
import { type Found, searchDay } from './search'
import { minutesText, ordinal } from './words'

/** Small searches, each with one thing changed: enough to see what it would save. */
const PROBE_SWEEPS = 15
const MOST_PROBES = 16
export interface Saving {
  readonly words: string
  readonly edits?: readonly DocumentEdit[]
  /** What it costs; absent where it costs nothing. */
  readonly price?: string | undefined
}
type Relaxation = Required<Omit<Saving, 'price'>> & { readonly shoot: Shoot; readonly mayCost?: boolean }
/** `sweeps` of the search itself: a day laid out in haste is not probed. */
type Context = { readonly seed: number; readonly sweeps: number; readonly forecasts: ReadonlyMap<string, DayForecast> }
type Lost = MomentJob | FloatJob

/** For each dropped shot, by weight, the first single change that gives it a place without costing another its own. */
export function whatWouldSave(problem: DayProblem, found: Found, lost: readonly Lost[], context: Context): Saving[] {
  const before = lost.reduce((sum, job) => sum + job.weight, 0)
  const saved = new Map<string, Probed>()
  /** A change of the whole day is tried once, and told of every shot it saves. */
  const saves = (relaxed: Relaxation, job: Lost): boolean => {
    if (!saved.has(relaxed.words) && saved.size < MOST_PROBES && context.sweeps >= PROBE_SWEEPS)
      saved.set(relaxed.words, probed(relaxed, lost, before, { ...context, now: { problem, draft: found.draft } }))
    return saved.get(relaxed.words)?.saves.has(job.shot.id) ?? false
  }
  return lost.map((job) => {
    const tried = relaxationsFor(problem.shoot, job.shot, found, problem)
    const saving = tried.find((relaxed) => saves(relaxed, job))
    if (!saving) return { words: fallback(job) }
    return { words: saving.words, edits: saving.edits, price: saved.get(saving.words)?.price }
  })
}

type Probed = { readonly saves: ReadonlySet<string>; readonly price: string | undefined }
type Now = { readonly now: { readonly problem: DayProblem; readonly draft: Found['draft'] } }
function probed({ shoot, mayCost }: Relaxation, lost: readonly Lost[], before: number, context: Context & Now): Probed {
  const problem = dayProblem(shoot, context.forecasts)
  const { draft } = searchDay(problem, { seed: context.seed, sweeps: PROBE_SWEEPS })
  const still = [
    ...problem.moments.filter((_, i) => !draft.moments[i]),
    ...problem.floats.filter((_, i) => !draft.floats[i]),
  ]
  const out = new Set([...still.map((j) => j.shot.id), ...problem.unfit.map((u) => u.shot.id)])
  const after = still.reduce((sum, j) => sum + j.weight, 0)
  const gained = lost.filter((job) => !out.has(job.shot.id) && (mayCost || after <= before - job.weight))
  return { saves: new Set(gained.map((job) => job.shot.id)), price: savingPrice(context.now, { problem, draft }) }
}

const fallback = ({ shot }: Lost) =>
  shot.state === 'sliced' || shot.state === 'hot' || shot.state === 'rested'
    ? 'A second roast, kept for this shot.'
    : 'No single change that was tried saves it: take it to another day, or give up two of the shots around it.'

function relaxationsFor(shoot: Shoot, shot: Shot, found: Found, problem: DayProblem): Relaxation[] {
  return [
    ...unpinned(shoot, shot),
    ...eitherLid(shoot, shot),
    ...shorter(shoot, shot),
    ...longerDay(shoot, found, problem),
    ...moreCameras(shoot, shot),
    ...morePeople(shoot, shot),
    ...higher(shoot, shot),
  ]
}

const withShot = (shoot: Shoot, id: string, change: Partial<Shot>): Shoot => ({
  ...shoot,
  shots: (shoot.shots ?? []).map((s) => (s.id === id ? { ...s, ...change } : s)),
})

/** An edit of one key of a shot. */
const edit = (shoot: Shoot, { id }: Shot, key: string, value: unknown): DocumentEdit => ({
  pointer: `/shots/${(shoot.shots ?? []).findIndex((shot) => shot.id === id)}/${key}`,
  value,
})

function unpinned(shoot: Shoot, shot: Shot): Relaxation[] {
  if (shot.pin === undefined) return []
  const words = `Let "${shot.title}" stand at another time than ${shot.pin}.`
  return [{ words, edits: [edit(shoot, shot, 'pin', null)], shoot: withShot(shoot, shot.id, { pin: undefined }) }]
}

function eitherLid(shoot: Shoot, shot: Shot): Relaxation[] {
  if (shot.lid === undefined || shot.lid === 'any') return []
  const words = `Shoot "${shot.title}" with the lid open or shut, as it comes.`
  return [{ words, edits: [edit(shoot, shot, 'lid', 'any')], shoot: withShot(shoot, shot.id, { lid: 'any' }) }]
}

/** Half the roll, or half of what is wanted after the moment. */
function shorter(shoot: Shoot, shot: Shot): Relaxation[] {
  const half = (time: number) => minutes(Math.max(1, Math.floor(time / 120)))
  const found: Relaxation[] = []
  if (shot.at?.after && shot.at.after >= 120) {
    const after = half(shot.at.after)
    const words = `Roll "${shot.title}" only ${minutesText(after / 60)} after the moment.`
    const edits = [edit(shoot, shot, 'at/after', formatDuration(after))]
    found.push({ words, edits, shoot: withShot(shoot, shot.id, { at: { ...shot.at, after } }) })
  }
  if (!shot.at && shot.roll && shot.roll >= 120) {
    const roll = half(shot.roll)
    const words = `Roll "${shot.title}" for ${minutesText(roll / 60)} instead of ${minutesText(shot.roll / 60)}.`
    const edits = [edit(shoot, shot, 'roll', formatDuration(roll))]
    found.push({ words, edits, shoot: withShot(shoot, shot.id, { roll }) })
  }
  return found
}

function longerDay(shoot: Shoot, found: Found, { clock }: DayProblem): Relaxation[] {
  const { day } = shoot
  const at = (minute: number) => formatClock(clock.toInstant(minute), shoot.zone)
  const options: Relaxation[] = []
  if (day?.wrap !== undefined) {
    const wrap = formatClock(later(clock.toInstant(clock.fromClock(day.wrap)), seconds(3600)), shoot.zone)
    const words = `Wrap at ${wrap} instead of ${day.wrap}.`
    options.push({ words, edits: [{ pointer: '/day/wrap', value: wrap }], shoot: { ...shoot, day: { ...day, wrap } } })
  }
  if (day?.call !== undefined) {
    const call = at(found.draft.crewCall - 60)
    options.push({
      words: `Call the crew at ${call} instead of ${day.call}.`,
      edits: [{ pointer: '/day/call', value: call }],
      shoot: { ...shoot, day: { ...day, call } },
    })
  }
  return options
}

/** The first id of its kind that nothing has. */
function freeId(taken: readonly { readonly id: string }[], ids: readonly string[]): string {
  return ids.find((id) => !taken.some((each) => each.id === id)) ?? `${ids[0]}-more`
}
const LETTERS = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ']
const cameraEdit = ({ cameras = [] }: Shoot): DocumentEdit => ({
  pointer: '/cameras/-',
  value: { id: freeId(cameras, LETTERS) },
})
function personEdit({ people = [] }: Shoot, role: string): DocumentEdit {
  const name = role.toLowerCase().replace(/[^a-z0-9]+/g, '-')
  const ids = people.map((_, i) => `${name}-${i + 2}`)
  return {
    pointer: '/people/-',
    value: { id: freeId(people, [...ids, `${name}-${people.length + 2}`]), roles: [role] },
  }
}

/** A locked-off camera wants one more camera and nobody behind it. */
function moreCameras(shoot: Shoot, shot: Shot): Relaxation[] {
  if (!shot.locked) return []
  const cameras = [...(shoot.cameras ?? []), { id: 'one-more' }]
  const words = `A ${ordinal(cameras.length)} camera for "${shot.title}".`
  const edits = [cameraEdit(shoot), edit(shoot, shot, 'camera', null)]
  return [{ words, edits, shoot: withShot({ ...shoot, cameras }, shot.id, { camera: undefined }) }]
}

/** One more person for each role it needs; an operator brings a camera. */
function morePeople(shoot: Shoot, shot: Shot): Relaxation[] {
  const people = shoot.people ?? []
  const named = (need: string) => people.find((p) => p.id === need && !people.some((q) => q.roles.includes(need)))
  const roles = new Set((shot.needs ?? []).flatMap((need) => named(need)?.roles[0] ?? need))
  return [...roles].map((role) => {
    const count = people.filter((p) => p.roles.includes(role)).length
    const more: Shoot = { ...shoot, people: [...people, { id: 'one-more', roles: [role] }] }
    const behind = role === 'camera' ? { ...more, cameras: [...(shoot.cameras ?? []), { id: 'one-more' }] } : more
    const words =
      role === 'camera' ? `A ${ordinal(count + 1)} operator with a camera` : `A ${ordinal(count + 1)} ${role}`
    const fixed = shot.camera !== undefined || (shot.needs ?? []).some((n) => named(n) !== undefined)
    const joins = [personEdit(shoot, role), ...(role === 'camera' ? [cameraEdit(shoot)] : [])]
    if (!fixed) return { words: `${words}.`, edits: joins, shoot: behind }
    const needs = (shot.needs ?? []).map((n) => named(n)?.roles[0] ?? n)
    const edits = [...joins, edit(shoot, shot, 'needs', needs), edit(shoot, shot, 'camera', null)]
    return {
      words: `${words} for "${shot.title}".`,
      edits,
      shoot: withShot(behind, shot.id, { needs, camera: undefined }),
    }
  })
}

function higher(shoot: Shoot, shot: Shot): Relaxation[] {
  if (shot.priority === 'must') return []
  const words = `Make "${shot.title}" a must: a shot of less weight then gives way.`
  const edits = [edit(shoot, shot, 'priority', 'must')]
  return [{ words, edits, shoot: withShot(shoot, shot.id, { priority: 'must' }), mayCost: true }]
}
