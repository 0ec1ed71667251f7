import { quantileOf } from '../model/quantiles'
import { fromIso, toIso } from '../plan/clock'
import type { Shoot } from '../plan/shoot'
import type { Instant } from '../units'
import { DROPPED } from './assign-moments'
import { isByClock } from './by-the-clock'
import { conflictsOf } from './conflicts'
import { type Crew, type Mode, modeOf } from './crew'
import { dayClock } from './day-clock'
import type { DayForecast } from './day-forecast'
import { AS_ANNOUNCED, type Genes, type MealPlace, type Place } from './draft'
import { droppedOf } from './dropped'
import type { FloatJob } from './float-job'
import type { Layout, PlacedShot } from './layout'
import { type MeatOnChoices, soonestMeatOn } from './meat-on'
import type { MomentJob } from './moment-job'
import { OPENINGS } from './place-moments'
import { type DayProblem, dayProblem, minuteOf } from './problem'
import { refineCalls } from './refine-calls'
import { RULES } from './rules'
import { type Found, searchDay } from './search'
import type { ShotWindow } from './shot-window'
import { sidesStanding } from './side-jobs'
import type { Announced, Standing } from './standing'
import { dutiesOf, toLayout } from './to-layout'

export interface RePlanOptions {
  /** What the crew was told. */
  readonly previous: Layout
  readonly now: Instant
  readonly seed: number
  readonly sweeps?: number
}
/** So many changes tried: a crew waits for the answer. */
const TRIALS = 800

/**
 * The rest of a running day laid out anew, after the forecast has changed. What is past or begins within ten minutes
 * stands; what was announced moves only where that is worth its price. `forecasts` give what has happened its time.
 */
export function rePlan(shoot: Shoot, forecasts: ReadonlyMap<string, DayForecast>, options: RePlanOptions): Layout {
  const { problem, draft, genes } = searchRest(shoot, forecasts, options)
  const duties = dutiesOf(problem, draft)
  // Nobody has time for what-ifs now: no probes.
  const dropped = droppedOf(problem, { draft, genes }, { seed: options.seed, sweeps: 0, forecasts })
  const conflicts = conflictsOf(problem, draft, duties, dropped)
  const asOf = toIso(options.now, shoot.zone)
  return { ...toLayout(problem, draft, duties, { dropped, conflicts }, forecasts), asOf }
}

/** The search behind it; `stable: false` asks what the rest of the day would cost if nothing had been announced. */
export function searchRest(
  shoot: Shoot,
  forecasts: ReadonlyMap<string, DayForecast>,
  { previous, now, seed, sweeps, stable = true }: RePlanOptions & { readonly stable?: boolean },
): Found & { readonly problem: DayProblem } {
  const isOn = fromIso(previous.start) <= now
  const on = isOn ? Math.round(dayClock(shoot).fromInstant(fromIso(previous.start))) : undefined
  const bare = running(dayProblem(shoot, forecasts, on), previous, now, stable)
  const from = genesFrom(bare, previous)
  const tries = sweeps ?? Math.ceil(TRIALS / Math.max(4, bare.floats.length + bare.moments.length))
  const first = searchDay(bare, { seed, sweeps: 0, from })
  const found = searchDay(refineCalls(bare, first.draft), { seed, sweeps: tries, from, near: stable })
  return { ...found, problem: refineCalls(bare, found.draft) }
}

function running(problem: DayProblem, previous: Layout, now: Instant, stable: boolean): DayProblem {
  const { clock, cooks, meatOn } = problem
  const at = (iso: string) => clock.fromInstant(fromIso(iso))
  const earliest = Math.ceil(clock.fromInstant(now) + RULES.frozenMin)
  const soonest = cooks.map((_, c) => soonestMeatOn(problem, c, earliest))
  // Once its fire is lit, or its crew on the way to that, a cook goes on when it was announced.
  const known = cooks.map((c, i) => {
    const on = previous.meatOn[c.id]
    return on !== undefined && at(on) < (soonest[i] as number) ? Math.round(at(on)) : null
  })
  const standing: Standing = {
    stable,
    earliest,
    meals: mealsOf(problem, previous).filter((m) => m.start <= earliest),
    moments: problem.moments.map((job) => announcedMoment(problem, job, previous, earliest)),
    floats: problem.floats.map((job) =>
      announcedFloat(problem, job, previous, { earliest, now: clock.fromInstant(now), known }),
    ),
  }
  return {
    ...problem,
    call: Math.round(at(previous.crewCall)),
    standing: onTheFire(problem, standing, known),
    sides: sidesStanding(problem, previous, earliest),
    meatOn: choicesLeft(meatOn, known, soonest),
  }
}

/** Meat that is on stays where it went on; the rest goes on when its fire can be lit. */
function choicesLeft(
  meatOn: MeatOnChoices,
  known: readonly (number | null)[],
  soonest: readonly number[],
): MeatOnChoices {
  const left = (all: readonly number[], c: number) => {
    const on = known[c] ?? null
    const open = all.flatMap((m, i) => ((on === null ? m >= (soonest[c] as number) : m === on) ? [i] : []))
    return { open, minutes: open.length > 0 ? open.map((i) => all[i] as number) : [on ?? (soonest[c] as number)] }
  }
  const first = left(meatOn.choices[0] ?? [], 0)
  const kept = (values: readonly number[]) => (values.length === 0 ? [] : first.open.map((i) => values[i] as number))
  return {
    ...meatOn,
    choices: meatOn.choices.map((all, c) => left(all, c).minutes),
    inLight: kept(meatOn.inLight),
    wish: kept(meatOn.wish),
  }
}

/** A shot that runs with the cook ends with it, however late that is now. */
function onTheFire(problem: DayProblem, standing: Standing, known: readonly (number | null)[]): Standing {
  const floats = standing.floats.map((announced, i) => {
    const span = (problem.floats[i] as FloatJob).span
    const zero = known.map((m) => m ?? 0)
    if (!span || !announced?.frozen || !announced.place) return announced
    const end = Math.max(announced.place.start + 1, Math.ceil(minuteOf(span[1], zero)))
    return { ...announced, place: { ...announced.place, end } }
  })
  return { ...standing, floats }
}

function placeOf(problem: DayProblem, job: MomentJob | FloatJob, previous: Layout): Place | null {
  const placed = previous.shots.find((s) => s.id === job.shot.id)
  if (!placed) return null
  const at = (iso: string) => problem.clock.fromInstant(fromIso(iso))
  const mode = modeAsPlaced(problem.crew, job, placed)
  return { mode, setupStart: at(placed.setupStart), start: at(placed.start), end: at(placed.end), risk: 0 }
}

function modeAsPlaced(crew: Crew, job: MomentJob | FloatJob, placed: PlacedShot): Mode {
  const people = placed.people.map((id) => crew.people.indexOf(id))
  const cameras = placed.camera.map((id) => crew.cameras.indexOf(id))
  const same = (m: Mode) => [...m.operators, ...m.hands].join() === people.join() && m.cameras.join() === cameras.join()
  const operators = job.modes[0]?.operators.length ?? cameras.length
  return (
    job.modes.find(same) ??
    modeOf(crew, people.slice(0, operators), people.slice(operators), cameras, job.shot.locked === true)
  )
}

function announcedMoment(problem: DayProblem, job: MomentJob, previous: Layout, earliest: number): Announced {
  const place = placeOf(problem, job, previous)
  const on = previous.meatOn[problem.cooks[job.cook]?.id ?? '']
  const zero = on === undefined ? Number.POSITIVE_INFINITY : problem.clock.fromInstant(fromIso(on))
  // What has slipped away from its announced time can still be staffed otherwise.
  const frozen = zero + job.likely - job.before <= earliest
  return { place, frozen, byClock: isByClock(job.shot, problem.shoot.shots) }
}
function announcedFloat(
  problem: DayProblem,
  job: FloatJob,
  previous: Layout,
  { earliest, now, known }: { earliest: number; now: number; known: readonly (number | null)[] },
): Announced | null {
  const place = placeOf(problem, job, previous)
  if (!place) return null
  const frozen = place.setupStart < earliest && canStand(problem, job, place, now, known)
  return { place, frozen, byClock: isByClock(job.shot, problem.shoot.shots) }
}
/** Not where what it shows is not there yet, nor, before it rolls, where that is gone by then or the lid must be off. */
function canStand(
  { cooks }: DayProblem,
  { windows, span, cook, lid }: FloatJob,
  { start, end }: Place,
  now: number,
  known: readonly (number | null)[],
): boolean {
  const zero = known.map((m) => m ?? Number.POSITIVE_INFINITY)
  const begun = start <= now
  const fits = (w: ShotWindow) =>
    w.lo.every((edge) => minuteOf(edge, zero) <= start + 1) &&
    (begun || w.hi.every((edge) => minuteOf(edge, zero) >= end - 1))
  if (!span && !windows.some(fits)) return false
  return (
    begun ||
    lid !== 'shut' ||
    OPENINGS.every((moment) => {
      const times = cooks[cook]?.sorted(moment)
      const at = times ? (zero[cook] as number) + quantileOf(times, 0.5) : Number.POSITIVE_INFINITY
      return at >= end || at + RULES.lidOpenMin <= start - 1
    })
  )
}

function mealsOf({ clock, crew }: DayProblem, previous: Layout): MealPlace[] {
  const at = (iso: string) => Math.round(clock.fromInstant(fromIso(iso)))
  const meals = previous.meals.map((m) => ({
    start: at(m.start),
    end: at(m.end),
    people: m.people.map((id) => crew.people.indexOf(id)).filter((p) => p >= 0),
  }))
  return meals.sort((a, b) => a.start - b.start)
}

/** The day as it was announced, in genes. */
function genesFrom(problem: DayProblem, previous: Layout): Genes {
  const { moments, floats, standing, meatOn, clock, cooks } = problem
  const announced = (i: number) => standing?.floats[i]?.place ?? null
  const startOf = (i: number) => announced(i)?.start ?? Number.POSITIVE_INFINITY
  const order = floats
    .map((_, i) => i)
    .sort((a, b) => (startOf(a) < startOf(b) ? -1 : startOf(a) > startOf(b) ? 1 : a - b))
  let before = problem.call ?? 0
  const meals = mealsOf(problem, previous).map((m) => {
    const wanted = m.start - before
    before = m.end
    return wanted
  })
  return {
    meatOn: cooks.map((c, i) => {
      const on = clock.fromInstant(fromIso(previous.meatOn[c.id] ?? previous.start))
      const later = (meatOn.choices[i] as readonly number[]).findIndex((m) => m >= on)
      return Math.max(0, later)
    }),
    callLead: 0,
    momentMode: moments.map((job, i) => {
      const place = standing?.moments[i]?.place
      return place ? job.modes.indexOf(place.mode) : DROPPED
    }),
    order,
    mode: floats.map((job, i) => Math.max(0, job.modes.indexOf(announced(i)?.mode as Mode))),
    offset: floats.map((_, i) => (announced(i) ? AS_ANNOUNCED : 0)),
    meals: [...meals, 270, 270, 270].slice(0, 3),
  }
}
