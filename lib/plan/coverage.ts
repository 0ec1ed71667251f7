import type { MomentId } from '../model/moment-ids'
import { burnsSolidFuel, type CookSketch, momentsOf, shortName } from './moments'
import type { LIGHTS } from './vocabulary'

export type Light = (typeof LIGHTS)[number]
type PersonDocument = { readonly id: string; readonly roles: readonly string[] }
type CameraDocument = { readonly id: string }
export type ShotDocument = { readonly id: string; readonly title: string; readonly [key: string]: unknown }

/** The start of every roast's coverage; times and states are common practice, no source. */
export const STARTING_SHOTS: readonly ShotDocument[] = [
  {
    id: 'raw-beauty',
    title: 'Raw beauty on the board',
    free: true,
    state: 'raw',
    setup: '8 min',
    roll: '6 min',
    needs: ['camera', 'stylist'],
    place: 'bench',
    priority: 'should',
  },
  {
    id: 'seasoning',
    title: 'Seasoning by hand',
    free: true,
    state: 'seasoned',
    setup: '5 min',
    roll: '6 min',
    needs: ['camera', 'presenter'],
    place: 'bench',
    after: ['raw-beauty'],
    priority: 'should',
  },
  {
    id: 'lighting',
    title: 'The fire is lit',
    at: { moment: 'fire-lit', before: '1 min', after: '3 min' },
    setup: '6 min',
    needs: ['camera', 'presenter'],
    place: 'cooker',
    lid: 'open',
    priority: 'should',
  },
  {
    id: 'meat-on',
    title: 'Meat goes on',
    at: { moment: 'meat-on', before: '1 min', after: '2 min' },
    setup: '6 min',
    needs: ['camera', 'presenter'],
    place: 'cooker',
    lid: 'open',
    priority: 'must',
  },
  {
    id: 'smoke',
    title: 'Smoke at the vent',
    between: ['meat-on', 'pull'],
    setup: '5 min',
    roll: '4 min',
    needs: ['camera'],
    place: 'cooker',
    lid: 'shut',
    priority: 'should',
  },
  {
    id: 'probe-close',
    title: 'Probe goes in, close',
    at: { moment: 'probe-in', before: '1 min', after: '2 min' },
    setup: '6 min',
    needs: ['camera', 'presenter'],
    place: 'cooker',
    lid: 'open',
    priority: 'must',
  },
  {
    id: 'turn',
    title: 'Turned over',
    at: { moment: 'turn', before: '1 min', after: '1 min' },
    setup: '6 min',
    needs: ['camera', 'presenter'],
    place: 'cooker',
    lid: 'open',
    priority: 'must',
  },
  {
    id: 'display',
    title: 'Probe display at the pull',
    at: { moment: 'pull', before: '1 min', after: '1 min' },
    setup: '5 min',
    needs: ['camera'],
    place: 'cooker',
    lid: 'shut',
    priority: 'must',
  },
  {
    id: 'vents',
    title: 'Vents go open',
    at: { moment: 'vents-open', before: '1 min', after: '1 min' },
    setup: '5 min',
    needs: ['camera', 'presenter'],
    place: 'cooker',
    lid: 'shut',
    priority: 'must',
  },
  {
    id: 'sear',
    title: 'Sear, close',
    at: { moment: 'sear-start', before: '30 s', after: '1 min' },
    setup: '5 min',
    needs: ['camera'],
    place: 'cooker',
    lid: 'any',
    priority: 'must',
  },
  {
    id: 'off-heat',
    title: 'Off the heat',
    at: { moment: 'off-heat', before: '30 s', after: '2 min' },
    setup: '5 min',
    needs: ['camera', 'presenter'],
    place: 'cooker',
    lid: 'open',
    priority: 'must',
  },
  {
    id: 'carryover',
    title: 'The carryover reading',
    between: ['off-heat', 'first-slice'],
    setup: '2 min',
    roll: '2 min',
    needs: ['camera'],
    place: 'bench',
    priority: 'should',
  },
  {
    id: 'first-cut',
    title: 'First slice with sound',
    at: { moment: 'first-slice', before: '1 min', after: '4 min' },
    setup: '8 min',
    needs: ['camera', 'presenter', 'sound'],
    place: 'table',
    priority: 'must',
  },
  {
    id: 'beauty',
    title: 'Sliced beauty',
    free: true,
    state: 'sliced',
    setup: '4 min',
    roll: '6 min',
    needs: ['camera', 'stylist'],
    place: 'table',
    after: ['first-cut'],
    priority: 'should',
  },
]

/** The starting shots of one cook: those of the fourteen whose moments its plan has, asked of the crew there is. */
export const coverageFor = (
  cook: CookSketch,
  people: readonly PersonDocument[],
  cameras: readonly CameraDocument[],
  light?: Light,
): ShotDocument[] => fittedShots(STARTING_SHOTS, cook, people, cameras, light)

/**
 * Shots as one cook and crew can have them. The sliced beauty waits for `light` where the day wants one. Without a sear
 * the meat comes off as it is pulled, so the lid is open for the display too.
 */
export function fittedShots(
  wanted: readonly ShotDocument[],
  cook: CookSketch,
  people: readonly PersonDocument[],
  cameras: readonly CameraDocument[],
  light?: Light,
): ShotDocument[] {
  if (cameras.length === 0) return []
  const moments: readonly string[] = momentsOf(cook)
  return wanted
    .filter((shot) => edgesOf(shot).every((edge) => moments.includes(edge)))
    .filter((shot) => !OF_A_FIRE.includes(shot.id) || burnsSolidFuel(cook.cooker.kind))
    .filter((shot) => (shot as { locked?: boolean }).locked !== true || cameras.length > 1)
    .map((shot) => ({ ...shot, cook: cook.id, title: titleFor(shot, cook) }))
    .map((shot) => (secondAtItsMoment(shot, cook) ? { ...shot, needs: ['camera'] } : shot))
    .map((shot) => (shot.id === 'display' && !moments.includes('sear-start') ? { ...shot, lid: 'any' as const } : shot))
    .flatMap((shot) => withStaff(shot, people))
    .map((shot) => (shot.id === 'beauty' && light ? inLight(shot, light) : shot))
}

/** An oven shows neither smoke nor embers, and is switched off rather than choked. */
const OF_A_FIRE: readonly string[] = ['smoke', 'embers', 'choke']

/** A shot that asks for somebody nobody here can be is none; a locked-off camera asks for nobody. */
function withStaff(shot: ShotDocument, people: readonly PersonDocument[]): ShotDocument[] {
  if ((shot as { needs?: unknown }).needs === undefined) return [shot]
  const needs = staffed(shot, people)
  return needs.length > 0 ? [{ ...shot, needs }] : []
}

const titleFor = (shot: ShotDocument, cook: CookSketch) =>
  shot.id === 'lighting' && !burnsSolidFuel(cook.cooker.kind)
    ? `The ${shortName(cook.cooker.kind)} is switched on`
    : shot.title

const edgesOf = (shot: ShotDocument): readonly string[] => {
  const { at, between, from, to } = shot as {
    at?: { moment: MomentId }
    between?: readonly string[]
    from?: string
    to?: string
  }
  return [...(at ? [at.moment] : []), ...(between ?? []), ...(from ? [from] : []), ...(to ? [to] : [])]
}

/**
 * The probe often goes in at the turn, or as the meat goes on: one pair of hands does both, so the presenter is asked
 * for by the other shot alone and a second camera takes the close one.
 */
function secondAtItsMoment(shot: ShotDocument, cook: CookSketch): boolean {
  if (shot.id !== 'probe-close') return false
  const at = cook.stages.find((stage) => stage.probe !== undefined)?.probe?.at
  return at === undefined || at === 'start' || at === 'turn'
}

/** A small crew does several jobs: a role that nobody holds goes to whoever is nearest to it, or is left out. */
const STAND_INS: Record<string, readonly string[]> = {
  presenter: ['presenter', 'cook'],
  stylist: ['stylist', 'second-cook'],
  sound: ['sound'],
  camera: ['camera'],
}
function staffed(shot: ShotDocument, people: readonly PersonDocument[]): string[] {
  const needs = (shot as { needs?: readonly string[] }).needs ?? []
  if (people.length === 0) return [...needs]
  const held = new Set(people.flatMap(({ roles }) => roles))
  const found = needs.flatMap((need) => (STAND_INS[need] ?? [need]).find((role) => held.has(role)) ?? [])
  return fits(found, people) ? found : found.filter((need) => need !== 'sound')
}

/** Sound needs its own pair of hands beside the camera; where one person holds both roles the camera hears. */
const fits = (needs: readonly string[], people: readonly PersonDocument[]) =>
  needs.length <= people.filter(({ roles }) => roles.some((role) => needs.includes(role))).length

function inLight(shot: ShotDocument, light: Light): ShotDocument {
  const { free: _, ...rest } = shot
  return { ...(rest as ShotDocument), light }
}

/** A crew of four with two cameras, and somebody who never leaves the fire alone. */
export const startingDay = (cook = 'hero') => ({
  people: [
    { id: 'presenter', roles: ['presenter', 'cook'] },
    { id: 'cam-1', roles: ['camera'] },
    { id: 'cam-2', roles: ['camera', 'sound'] },
    { id: 'stylist', roles: ['stylist'] },
  ],
  cameras: [{ id: 'A' }, { id: 'B' }],
  tasks: [{ id: 'fire-watch', title: 'In sight of the fire', cook, from: 'fire-lit', to: 'off-heat', needs: ['cook'] }],
})
