import { newBoard } from '../day/board'
import type { Mode } from '../day/crew'
import { type DayProblem, dayProblem } from '../day/problem'
import { layDraft } from '../day/scheduler'
import { firstGenes } from '../day/search'
import type { Forecast } from '../model/forecast'
import { chanceOf } from '../model/random'
import { formatClock } from '../plan/clock'
import { parseShoot } from '../plan/parse'
import type { Shoot, ShootDocument } from '../plan/shoot'

/**
 * A day of so many shots into which every one is known to fit, because it was cut out of a laid-out day: its optimum, all
 * shots placed and none interrupted, is certain. Windows are then widened, so that the search has to find it again.
 */
export function plantedDay(shots: number, seed: number, forecast: Forecast): Shoot {
  const { uniform } = chanceOf(seed, shots, 0x706c)
  const pick = (count: number) => Math.floor(uniform() * count)
  const bare = parsed({ ...document(shots), shots: MOMENTS })
  const problem = dayProblem(bare, new Map([['hero', forecast]]))
  const board = newBoard(problem)
  layDraft(board, firstGenes(problem))
  const planted: Record<string, unknown>[] = []
  for (let tries = 0; planted.length < shots - MOMENTS.length && tries < shots * 60; tries++) {
    const mode = randomMode(problem, pick)
    const [setup, roll] = [3 + pick(5), 3 + pick(9)]
    let at = board.crewCall + pick(600)
    for (let next = at; ; at = next) {
      next = board.booking.nextStart(mode, at, setup, roll + 1)
      if (next === at) break
    }
    const end = at + setup + roll + 1
    if (end > board.lastEnd || board.problem.risk.of(mode.rollMask, board.momentMasks, null, at, end, board.meatOn) > 0)
      continue
    board.booking.book(mode.rollMask, at, end)
    const clock = (minute: number) => formatClock(problem.clock.toInstant(minute), bare.zone)
    const window = [Math.max(board.crewCall, at + setup - pick(60)), Math.min(board.lastEnd, end + pick(60))]
    planted.push({
      id: `cut-${planted.length + 1}`,
      title: `Cut ${planted.length + 1}`,
      between: window.map(clock),
      setup: `${setup} min`,
      roll: `${roll} min`,
      needs: ['camera', ...mode.hands.map((p) => problem.crew.roles[p]?.[0] as string)],
      priority: pick(2) === 0 ? 'should' : 'could',
    })
  }
  return parsed({ ...document(shots), shots: [...MOMENTS, ...planted] })
}

/** The same day before anything is planted: its cook can be forecast. */
export const plantedDayShell = (): Shoot => parsed({ ...document(20), shots: MOMENTS })

function randomMode(problem: DayProblem, pick: (count: number) => number): Mode {
  const { crew } = problem
  const operators = crew.people.flatMap((_, i) => (crew.roles[i]?.includes('camera') ? [i] : []))
  const others = crew.people.flatMap((_, i) => (crew.roles[i]?.includes('camera') ? [] : [i]))
  const operator = operators[pick(operators.length)] as number
  const hands = pick(3) === 0 ? [] : [others[pick(others.length)] as number]
  const camera = pick(crew.cameras.length)
  const mask = [0]
  for (const bit of [operator, ...hands, crew.people.length + camera]) mask[0] = (mask[0] as number) | (1 << bit)
  return { operators: [operator], hands, cameras: [camera], setupMask: mask, rollMask: mask }
}

function parsed(file: ShootDocument): Shoot {
  const read = parseShoot(file)
  if (!read.ok) throw new Error(read.problems.map((p) => `${p.pointer}: ${p.sentence}`).join('\n'))
  return read.value
}

const at = (moment: string) => ({ at: { moment, before: '1 min', after: '1 min' } })
const MOMENTS: Record<string, unknown>[] = [
  {
    id: 'lighting',
    title: 'Lighting',
    ...at('fire-lit'),
    setup: '5 min',
    needs: ['camera', 'presenter'],
    priority: 'must',
  },
  { id: 'on', title: 'Meat on', ...at('meat-on'), setup: '5 min', needs: ['camera', 'presenter'], priority: 'must' },
  { id: 'turn', title: 'The turn', ...at('turn'), setup: '5 min', needs: ['camera', 'presenter'], priority: 'must' },
  { id: 'pull', title: 'The pull', ...at('pull'), setup: '5 min', needs: ['camera'], priority: 'must' },
  {
    id: 'off',
    title: 'Off the heat',
    ...at('off-heat'),
    setup: '5 min',
    needs: ['camera', 'presenter'],
    priority: 'must',
  },
  {
    id: 'cut',
    title: 'First slice',
    ...at('first-slice'),
    setup: '5 min',
    needs: ['camera', 'presenter'],
    place: 'table',
    priority: 'must',
  },
]

/** One operator with a camera and one pair of hands for about every twenty-five shots: a full day. */
function document(shots: number): ShootDocument {
  const sets = Math.max(1, Math.round(shots / 25))
  const numbers = Array.from({ length: sets }, (_, i) => i + 1)
  return {
    emberslate: 1,
    title: `A day of ${shots} shots`,
    date: '2027-05-15',
    zone: 'Europe/Dublin',
    place: { lat: 53.35, lon: -6.26 },
    cooks: [
      {
        id: 'hero',
        roast: { cut: 'pork-loin-bone-in', mass: '3.6 kg', start: '4 °C' },
        cooker: { kind: 'kettle-charcoal' },
        stages: [
          { do: 'preheat', at: '150 °C' },
          { do: 'roast', at: '150 °C', until: { core: '57 °C' }, turn: { at: 'half' }, probe: { at: 'turn' } },
          { do: 'sear', at: '300 °C', until: { core: '63 °C' }, max: '15 min' },
          { do: 'rest', until: { after: '15 min' }, max: '40 min' },
        ],
      },
    ],
    day: { call: '09:00', wrap: '17:30' },
    people: [
      { id: 'presenter', roles: ['presenter', 'cook'] },
      ...numbers.map((n) => ({ id: `cam-${n}`, roles: ['camera'] })),
      ...numbers.map((n) => ({ id: `hand-${n}`, roles: ['stylist'] })),
    ],
    cameras: numbers.map((n) => ({ id: `C${n}` })),
    shots: [],
  }
}
