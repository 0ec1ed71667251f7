import { type Booked, type Facts, isWatch, type MealSpan, overlap, peopleSpan } from './facts'
import { hoursOf } from './hours'
import { LIMITS } from './limits'
import { inLight } from './placement'
import { sharePleased } from './served'
import { type Violation, violation } from './violation'

/** The crew comes, eats and goes home as promised, and the meat goes on when the layout says. */
export function checkCrewDay(facts: Facts): Violation[] {
  return [
    ...facts.booked.flatMap((b) => checkHours(facts, b)),
    ...checkBounds(facts),
    ...checkPersonal(facts),
    ...everybodyBooked(facts).flatMap((p) => checkMeals(facts, p)),
    ...facts.meals.flatMap((m) => checkMeal(facts, m)),
    ...checkMeat(facts),
    ...checkSlice(facts),
  ]
}

function checkHours({ crewCall, wrap, titleOf, clock }: Facts, b: Booked): Violation[] {
  const found: Violation[] = []
  if (Math.min(b.setup, b.start) < crewCall)
    found.push(
      violation(
        'before-call',
        `${titleOf(b.id)} begins before the crew is called at ${clock.show(crewCall)}.`,
        [b.id],
        b.people,
      ),
    )
  if (b.end > wrap)
    found.push(violation('after-wrap', `${titleOf(b.id)} ends after wrap at ${clock.show(wrap)}.`, [b.id], b.people))
  return found
}

function checkBounds({ shoot, layout, crewCall, wrap, edge, clock }: Facts): Violation[] {
  const limit = (text: string | undefined) => (text === undefined ? null : edge('', text))
  const [call, last] = [limit(shoot.day?.call), limit(shoot.day?.wrap)]
  const found: Violation[] = []
  if (call !== null && crewCall < call)
    found.push(
      violation('crew-call-early', `The crew is called at ${clock.show(crewCall)}, before ${shoot.day?.call}.`),
    )
  const overtime = (shoot.day?.overtime ?? 0) * 1000
  if (last !== null && wrap > last + overtime)
    found.push(violation('wrap-late', `The day wraps at ${clock.show(wrap)}, after ${shoot.day?.wrap}.`))
  else if (last !== null && wrap > last && !layout.conflicts.some((c) => c.rule === 'overtime'))
    found.push(
      violation(
        'overtime-untold',
        `The day wraps at ${clock.show(wrap)}, after ${shoot.day?.wrap}, and no conflict says so.`,
      ),
    )
  return found
}

/** Everybody comes before their own first need and stays to their last. */
function checkPersonal({ layout, booked, duties, clock }: Facts): Violation[] {
  const own = new Map((layout.personal ?? []).map((p) => [p.person, p]))
  const needs = [
    ...booked.flatMap((b) => b.people.map((person) => ({ person, ...peopleSpan(b), shots: [b.id] }))),
    ...duties.flatMap((d) => d.people.map((person) => ({ person, start: d.start, end: d.end, shots: [] as string[] }))),
  ]
  if (layout.personal === undefined) return []
  return needs.flatMap(({ person, start, end, shots }) => {
    const day = own.get(person)
    if (!day)
      return [violation('personal-missing', `${person} is needed and has no call of their own.`, shots, [person])]
    const [call, wrap] = [Date.parse(day.call), Date.parse(day.wrap)]
    if (start < call)
      return [
        violation(
          'personal-call-late',
          `${person} is needed at ${clock.show(start)} and called for ${clock.show(call)}.`,
          shots,
          [person],
        ),
      ]
    if (end > wrap)
      return [
        violation(
          'personal-wrap-early',
          `${person} is needed until ${clock.show(end)} and released at ${clock.show(wrap)}.`,
          shots,
          [person],
        ),
      ]
    return []
  })
}

const everybodyBooked = ({ booked, duties }: Facts) => [...new Set([...booked, ...duties].flatMap((x) => x.people))]

function checkMeals(facts: Facts, person: string): Violation[] {
  const { meals, clock } = facts
  const there = hoursOf(facts, person)
  const crewCall = Math.max(facts.crewCall, there.start)
  const wrap = Math.min(facts.wrap, there.end)
  const [first, second] = meals.filter((m) => m.people.includes(person)).sort((a, b) => a.start - b.start)
  const mustEatBy = crewCall + LIMITS.firstMealWithinMs
  const say = (rule: 'meal-missing' | 'meal-late' | 'second-meal-late', by: number) => {
    const which = rule === 'second-meal-late' ? 'a second meal' : 'a first meal'
    return [violation(rule, `${person} has not had ${which} by ${clock.show(by)}, 6 h on.`, [], [person])]
  }
  if (!first) return wrap > mustEatBy ? say('meal-missing', mustEatBy) : []
  if (first.start > mustEatBy + LIMITS.graceMs) return say('meal-late', mustEatBy)
  const again = first.end + LIMITS.nextMealWithinMs
  const inTime = second !== undefined && second.start <= again + LIMITS.graceMs
  return wrap > again && !inTime ? say('second-meal-late', again) : []
}

function checkMeal(facts: Facts, meal: MealSpan): Violation[] {
  const asked = Math.max((facts.shoot.day?.meal ?? 0) * 1000, facts.shoot.day?.meal === undefined ? LIMITS.mealMs : 0)
  const at = facts.clock.show(meal.start)
  const found: Violation[] = []
  if (meal.end - meal.start < asked)
    found.push(violation('meal-short', `The meal at ${at} is shorter than ${asked / 60_000} min.`, [], meal.people))
  for (const b of facts.booked) {
    const pulled = overlap(meal, peopleSpan(b)) ? b.people.filter((p) => meal.people.includes(p)) : []
    if (pulled.length > 0)
      found.push(
        violation(
          'meal-interrupted',
          `${facts.titleOf(b.id)} falls in the meal at ${at} of ${pulled.join(', ')}.`,
          [b.id],
          pulled,
        ),
      )
  }
  for (const d of facts.duties.filter((d) => !isWatch(d.task) && overlap(meal, d))) {
    const pulled = d.people.filter((p) => meal.people.includes(p))
    if (pulled.length > 0)
      found.push(
        violation('meal-interrupted', `Task "${d.id}" falls in the meal at ${at} of ${pulled.join(', ')}.`, [], pulled),
      )
  }
  return found
}

function checkMeat({ shoot, layout, meatOn }: Facts): Violation[] {
  const missing = shoot.cooks
    .filter((c) => layout.meatOn[c.id] === undefined)
    .map((c) => violation('meat-on-missing', `The layout does not say when the meat of "${c.id}" goes on.`))
  const first = shoot.cooks[0]?.id ?? ''
  if (layout.meatOn[first] === undefined || Date.parse(layout.start) === meatOn(first)) return missing
  return [...missing, violation('start-mismatch', `The start is not the meat-on of "${first}".`)]
}

/** A slice that cannot come when wanted is forgiven where a conflict says so. */
function checkSlice(facts: Facts): Violation[] {
  const { shoot, layout, moment, clock } = facts
  const wanted = shoot.day?.slice
  const likely = moment(shoot.cooks[0]?.id ?? '', 'first-slice')?.likely
  if (!wanted || typeof likely !== 'number' || layout.conflicts.some((c) => c.rule.includes('slice'))) return []
  if (wanted.chance !== undefined) return checkChance(facts, wanted.chance)
  if ('in' in wanted) {
    if (inLight(facts, wanted.in, likely, likely)) return []
    return [violation('slice-missed', `The first slice is likely at ${clock.show(likely)}, not in ${wanted.in}.`)]
  }
  const asked = facts.edge('', wanted.at) ?? likely
  if (Math.abs(likely - asked) <= LIMITS.sliceMs) return []
  return [violation('slice-missed', `The first slice is likely at ${clock.show(likely)}, and wanted at ${wanted.at}.`)]
}

/** Where the day asks for a chance it is the share of cooks that counts, not the likely one. */
function checkChance({ shoot, forecast, meatOn, edge }: Facts, asked: number): Violation[] {
  const first = shoot.cooks[0]?.id ?? ''
  const served = forecast(first)
  if (!served) return []
  const share = sharePleased(shoot, served, meatOn(first), (at) => edge('', at) ?? Number.NaN)
  if (share >= asked - LIMITS.chanceGrain) return []
  const text = (s: number) => `${Math.round(s * 100)} %`
  return [
    violation(
      'slice-missed',
      `The slice comes as wished in ${text(share)} of cooks, and ${text(asked)} was asked for.`,
    ),
  ]
}
