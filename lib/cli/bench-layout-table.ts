import { searchDay } from '../day/search'
import { openDay } from './committed-days'
import { realisticDay, type Size } from './realistic-day'

const SWEEPS = 20
const SHOTS: readonly Size[] = [20, 40, 80, 160].map((shots) => ({ shots }))
const PEOPLE: readonly Size[] = [1, 4, 8].map((people) => ({ shots: 40, people }))
const MEMBERS: readonly Size[] = [64, 256, 1024].map((members) => ({ shots: 40, members }))

/** Time to read a day and to try 20 sweeps of changes, and what the day then costs, by shots, people and members. */
export function layoutTable(): string[] {
  const head = ['shots', 'people', 'members', 'ready ms', 'sweeps ms', 'cost']
  const rows = [...SHOTS, ...PEOPLE, ...MEMBERS].map((size) => {
    const started = performance.now()
    const { problem } = openDay(realisticDay(size.shots, 1, size))
    const ready = performance.now()
    const { draft } = searchDay(problem, { seed: 1, sweeps: SWEEPS })
    const members = problem.cooks[0]?.members ?? 0
    const times = [ready - started, performance.now() - ready].map((ms) => ms.toFixed(0))
    return [`${size.shots}`, `${problem.crew.people.length}`, `${members}`, ...times, draft.cost.toFixed(0)]
  })
  return [head, ...rows].map((cells) => cells.map((cell) => cell.padStart(10)).join(''))
}
