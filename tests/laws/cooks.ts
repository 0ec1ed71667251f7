/** Builders for the laws: complete cook plans in which a test states only the difference, and one member to run them with. */
import fc from 'fast-check'
import { COOKER_KINDS, type CookerKind, type CookPlan, type Stage } from '../../lib/model/cook'
import { COOKERS } from '../../lib/model/cooker'
import { CUTS, cutById } from '../../lib/model/cuts'
import { settingOf } from '../../lib/model/setting'
import { geometryOf } from '../../lib/model/shape'
import { type Run, type Setting, simulate } from '../../lib/model/simulate'
import { centralMember } from '../../lib/model/spread'
import { celsius, frac, kilograms, metres, metresPerSecond, minutes } from '../../lib/units'

interface Change {
  readonly cut?: string
  readonly kg?: number
  readonly startC?: number
  readonly kind?: CookerKind
  readonly atC?: number
  readonly coreC?: number
  readonly sear?: Stage
  readonly restMin?: number
  readonly lid?: readonly (readonly [atMin: number, openMin: number])[]
  readonly altitudeM?: number
}
export function cookPlan(change: Change = {}): CookPlan {
  const at = celsius(change.atC ?? 150)
  const after = minutes(change.restMin ?? 15)
  return {
    id: 'hero',
    roast: {
      cut: change.cut ?? 'lamb-leg-bone-in',
      mass: kilograms(change.kg ?? 3.2),
      start: celsius(change.startC ?? 4),
    },
    cooker: { kind: change.kind ?? 'kettle-charcoal' },
    stages: [
      { do: 'preheat', at },
      { do: 'roast', at, until: { core: celsius(change.coreC ?? 50) }, probe: { at: 'start' } },
      ...(change.sear ? [change.sear] : []),
      { do: 'rest', until: { after } },
    ],
    surroundings: {
      air: celsius(15),
      wind: metresPerSecond(2),
      humidity: frac(0.65),
      altitude: metres(change.altitudeM ?? 0),
    },
    lidOpenings: (change.lid ?? []).map(([from, open]) => ({ at: minutes(from), open: minutes(open) })),
  }
}

/** The plan as its likely member lives it; `grid` refines the numbers only. */
export function centralRun(plan: CookPlan, grid: Pick<Setting, 'nodes' | 'stepS'> = {}): Run {
  const cut = cutById(plan.roast.cut)
  if (!cut) throw new RangeError(`no cut ${plan.roast.cut}`)
  return simulate(
    { ...settingOf(plan, cut, geometryOf(cut, plan.roast.mass, plan.roast)), ...grid },
    centralMember(plan.roast.start, COOKERS[plan.cooker.kind]),
  )
}

const probeAt = fc.oneof(
  fc.constant<'start' | 'turn'>('start'),
  fc.constant<'start' | 'turn'>('turn'),
  fc.integer({ min: 5, max: 150 }).map((min) => minutes(min)),
)
const turn = fc.oneof(
  fc.constant({ at: 'half' as const }),
  fc.integer({ min: 10, max: 120 }).map((min) => ({ after: minutes(min) })),
)
/** Any plan that the shoot file allows, sensible or not. */
export const anyPlan: fc.Arbitrary<CookPlan> = fc
  .record({
    cut: fc.constantFrom(...CUTS.map((cut) => cut.id)),
    scale: fc.integer({ min: 0, max: 7 }).map((step) => 0.6 * 1.15 ** step),
    kind: fc.constantFrom<CookerKind>(...COOKER_KINDS.filter((kind) => kind !== 'water-bath')),
    startC: fc.integer({ min: 0, max: 20 }),
    atC: fc.integer({ min: 110, max: 230 }),
    coreC: fc.integer({ min: 35, max: 95 }),
    probe: probeAt,
    turn: fc.option(turn, { nil: undefined }),
    lead: fc.option(fc.constant(celsius(250)), { nil: undefined }),
    sear: fc.option(
      fc.record({
        atC: fc.integer({ min: 220, max: 350 }),
        rise: fc.integer({ min: 0, max: 12 }),
        max: fc.integer({ min: 3, max: 30 }),
      }),
      { nil: undefined },
    ),
    limit: fc.option(fc.integer({ min: 30, max: 400 }), { nil: undefined }),
    rest: fc.integer({ min: 0, max: 60 }),
    cold: fc.boolean(),
    fuel: fc.option(fc.double({ min: 0.5, max: 5, noNaN: true }), { nil: undefined, freq: 1 }),
    cover: fc.constantFrom('open' as const, 'tent' as const),
    on: fc.constantFrom('rack' as const, 'board' as const),
    box: fc.option(fc.integer({ min: 5, max: 240 }), { nil: undefined }),
    altitude: fc.integer({ min: 0, max: 3000 }),
    lid: fc.array(fc.tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 1, max: 6 })), { maxLength: 4 }),
  })
  .map((x): CookPlan => {
    const at = celsius(x.atC)
    const max = x.limit === undefined ? {} : { max: minutes(x.limit) }
    const lead = x.lead === undefined ? {} : { lead: x.lead }
    const plain = cookPlan({
      cut: x.cut,
      kg: (cutById(x.cut)?.atMassKg ?? 1) * x.scale,
      startC: x.startC,
      kind: x.kind,
    })
    const sear: Stage[] = x.sear
      ? [
          {
            do: 'sear',
            at: celsius(x.sear.atC),
            until: { core: celsius(x.coreC + x.sear.rise) },
            max: minutes(x.sear.max),
          },
        ]
      : []
    return {
      ...plain,
      stages: [
        { do: 'preheat', at, ...(x.cold && x.kind.includes('oven') ? { cold: true } : {}) },
        {
          do: 'roast',
          at,
          until: { core: celsius(x.coreC) },
          probe: { at: x.probe, ...lead },
          ...(x.turn ? { turn: x.turn } : {}),
          ...max,
        },
        ...sear,
        { do: 'rest', until: { after: minutes(x.rest) }, cover: x.cover, on: x.on },
        ...(x.box === undefined ? [] : [{ do: 'hold', in: 'box', until: { after: minutes(x.box) } } as const]),
      ],
      cooker: {
        ...plain.cooker,
        ...(x.fuel !== undefined && COOKERS[x.kind].fuel ? { fuel: kilograms(x.fuel) } : {}),
      },
      surroundings: { ...plain.surroundings, altitude: metres(x.altitude) },
      lidOpenings: x.lid.map(([from, open]) => ({ at: minutes(from), open: minutes(open) })),
    }
  })
