import type { Draft } from '../day/draft'
import { searchDay } from '../day/search'
import type { ShootDocument } from '../plan/shoot'
import { openDay } from './committed-days'
import { realisticDay, type Size } from './realistic-day'

const SWEEPS = 20
const SHOTS: readonly Size[] = [20, 40, 80].map((shots) => ({ shots, members: 256 }))
const PEOPLE: readonly Size[] = [2, 4, 8].map((people) => ({ shots: 40, people, members: 256 }))
const MEMBERS: readonly Size[] = [256, 1024].map((members) => ({ shots: 40, members }))
const HEAD = ['shots', 'people', 'members', 'ready ms', 'sweeps ms', 'cost', 'dropped']

/** Time to read a day and to try 20 sweeps of changes, and what the day then costs and drops, by shots, people and members. */
export function dayTable(): string[] {
  const rows = [SHOTS, PEOPLE, MEMBERS].flatMap((sizes) => ['', ...sizes.map(rowOf)])
  return [inColumns(HEAD), ...rows]
}

function rowOf(size: Size): string {
  const started = performance.now()
  const day = realisticDay(size.shots, 1, size)
  const { problem } = openDay({ ...day, document: allHandsOf(day.document) })
  const ready = performance.now()
  const { draft } = searchDay(problem, { seed: 1, sweeps: SWEEPS })
  const times = [ready - started, performance.now() - ready]
  const members = problem.cooks[0]?.members ?? 0
  const figures = [...times, draft.cost].map((figure) => figure.toFixed(0))
  return inColumns([size.shots, problem.crew.people.length, members, ...figures, droppedOf(draft)].map(String))
}

type Person = { readonly id: string; readonly roles: readonly string[] }
/** In a crew of two whoever presents also dresses the table. */
function allHandsOf(document: ShootDocument): ShootDocument {
  const people = document.people as readonly Person[]
  if (people.some(({ roles }) => roles.includes('stylist'))) return document
  const [first, ...others] = people
  return first ? { ...document, people: [{ ...first, roles: [...first.roles, 'stylist'] }, ...others] } : document
}

const droppedOf = ({ moments, floats }: Draft) => [...moments, ...floats].filter((place) => place === null).length
const inColumns = (cells: readonly string[]) => cells.map((cell) => cell.padStart(10)).join('')
