import type { Shoot, Shot } from '../plan/shoot'

/** A set of people and cameras, 31 to a word. */
export type Mask = readonly number[]
const PER_WORD = 31

/** People first, then cameras, each with its place in the masks. */
export interface Crew {
  readonly people: readonly string[]
  readonly roles: readonly (readonly string[])[]
  readonly cameras: readonly string[]
  readonly words: number
}
/** One way to staff a shot; indices into the crew. `operators` are those behind a camera, `hands` all others. */
export interface Mode {
  readonly operators: readonly number[]
  readonly hands: readonly number[]
  readonly cameras: readonly number[]
  /** Bound while it is set up, and while it rolls. */
  readonly setupMask: Mask
  readonly rollMask: Mask
  /** Somebody is behind a camera that is another's: seldom any better, and need not be tried as often. */
  readonly crossed?: boolean
}
const MOST_PICKS = 6
/** One of the ways to staff a shot; seldom one in which cameras are crossed. */
export function anyMode(modes: readonly Mode[], random: () => number): number {
  let mode = Math.floor(random() * modes.length)
  for (let k = 1; k < MOST_PICKS && modes[mode]?.crossed; k++) mode = Math.floor(random() * modes.length)
  return mode
}
const MOST_MODES = 48
const MOST_STAFFINGS = 2000

export function crewOf(shoot: Shoot): Crew {
  const people = shoot.people ?? []
  const cameras = (shoot.cameras ?? []).map((c) => c.id)
  return {
    people: people.map((p) => p.id),
    roles: people.map((p) => p.roles),
    cameras,
    words: Math.max(1, Math.ceil((people.length + cameras.length) / PER_WORD)),
  }
}
export const peopleMask = (crew: Crew, people: readonly number[]) => maskOf(crew, people, [])

export function maskOf(crew: Crew, people: readonly number[], cameras: readonly number[]): Mask {
  const mask = new Array<number>(crew.words).fill(0)
  for (const bit of [...people, ...cameras.map((c) => crew.people.length + c)]) {
    const word = Math.floor(bit / PER_WORD)
    mask[word] = (mask[word] as number) | (1 << (bit % PER_WORD))
  }
  return mask
}
export const meet = (a: Mask, b: Mask) => a.some((word, i) => (word & (b[i] as number)) !== 0)

/** Who can fill a need: a person's id, or everybody with the role. */
export const candidatesFor = (crew: Crew, need: string): number[] =>
  crew.people.flatMap((id, i) => (id === need || (crew.roles[i] as readonly string[]).includes(need) ? [i] : []))

/** Every way to staff a shot; of very many an even choice. None where a need finds nobody. */
export function modesFor(crew: Crew, shot: Shot): Mode[] {
  const needs = shot.needs ?? []
  const wanted = needs.filter((n) => n === 'camera').length
  const hands = needs.filter((n) => n !== 'camera')
  const cameraCount = Math.max(wanted, shot.camera !== undefined || shot.locked ? 1 : 0)
  const operatorCount = shot.locked ? Math.max(wanted, anyOperator(crew) ? 1 : 0) : wanted
  const teams = staffings(crew, [...new Array<string>(operatorCount).fill('camera'), ...hands])
  const pairs = cameraSets(crew, cameraCount, shot.camera).flatMap((cameras) =>
    teams.map((people) => ({ cameras, people })),
  )
  const modes = evenly(pairs, MOST_MODES).map(({ cameras, people }) =>
    modeOf(crew, people.slice(0, operatorCount), people.slice(operatorCount), cameras, shot.locked === true),
  )
  return modes.every((mode) => mode.crossed) ? modes.map((mode) => ({ ...mode, crossed: false })) : modes
}
function evenly<T>(all: readonly T[], most: number): T[] {
  if (all.length <= most) return [...all]
  return Array.from({ length: most }, (_, i) => all[Math.floor((i * all.length) / most)] as T)
}
const anyOperator = (crew: Crew) => candidatesFor(crew, 'camera').length > 0

export function modeOf(crew: Crew, operators: number[], hands: number[], cameras: number[], locked: boolean): Mode {
  const all = maskOf(crew, [...operators, ...hands], cameras)
  const rollMask = locked ? maskOf(crew, [], cameras) : all
  return { operators, hands, cameras, setupMask: all, rollMask, crossed: !locked && crosses(crew, operators, cameras) }
}
function crosses(crew: Crew, operators: readonly number[], cameras: readonly number[]): boolean {
  const all = candidatesFor(crew, 'camera')
  return operators.some((p) => !cameras.includes(all.indexOf(p) % crew.cameras.length))
}

/** Operators are interchangeable: only ascending sets of cameras. */
function cameraSets(crew: Crew, count: number, named: string | undefined): number[][] {
  const all = crew.cameras.map((_, i) => i)
  const sets = subsets(all, count)
  return named === undefined ? sets : sets.filter((set) => set.some((i) => crew.cameras[i] === named))
}
function subsets(from: readonly number[], count: number): number[][] {
  if (count === 0) return [[]]
  return from.flatMap((first, i) => subsets(from.slice(i + 1), count - 1).map((rest) => [first, ...rest]))
}
/** One person for each need, nobody twice; two of the same role in one order only. */
function staffings(crew: Crew, needs: readonly string[], taken: readonly number[] = []): number[][] {
  const need = needs[taken.length]
  if (need === undefined) return [[...taken]]
  const alike = needs[taken.length - 1] === need ? (taken.at(-1) as number) : -1
  return candidatesFor(crew, need)
    .filter((p) => p > alike && !taken.includes(p))
    .flatMap((p) => staffings(crew, needs, [...taken, p]))
    .slice(0, MOST_STAFFINGS)
}
