import type { Layout } from '../day/layout'
import { formatDate } from '../plan/clock'
import type { Shoot } from '../plan/shoot'
import type { UnitSystem } from '../units'
import { namesOf } from './call-words'
import { crewRisks } from './risk-crew'
import { fireRisks } from './risk-fire'
import { foodRisks } from './risk-food'

export interface RiskInput {
  readonly shoot: Shoot
  readonly layout: Layout
  readonly units: UnitSystem
  readonly revision: number
}
/** One hazard, what is done about it and who does it; ticked by hand. */
export interface RiskLine {
  readonly hazard: string
  readonly does: string
  /** A role of this crew, or nobody yet: then it prints as a line to write on. */
  readonly who: string
}
export interface RiskSheet {
  readonly title: string
  readonly day: string
  readonly revision: string
  /** Null prints as a line to write on. */
  readonly responsible: string | null
  readonly fireRules: string | null
  readonly emergency: string | null
  readonly hospital: string | null
  readonly groups: readonly { readonly title: string; readonly lines: readonly RiskLine[] }[]
  readonly defers: string
}

/** Who of this crew a line falls to: the first with one of these roles. */
export type WhoOf = (...roles: readonly string[]) => string

/** The hazards that this plan brings with it. Common practice, no source; it makes no law and knows none. */
export function riskSheetOf(input: RiskInput): RiskSheet {
  const { shoot } = input
  const who: WhoOf = (...roles) => {
    const person = roles.flatMap((role) => shoot.people?.filter((each) => each.roles.includes(role)) ?? [])[0]
    return person ? namesOf({ shoot }, [person.id]) : ''
  }
  const groups = [
    { title: 'Fire and heat', lines: fireRisks(input, who) },
    { title: 'Crew and ground', lines: crewRisks(input, who) },
    { title: 'Food', lines: foodRisks(input, who) },
  ]
  return {
    title: shoot.title,
    day: formatDate(shoot),
    revision: `Revision ${input.revision}`,
    responsible: shoot.risk?.responsible ?? null,
    fireRules: shoot.risk?.fireRules ?? null,
    emergency: shoot.callSheet?.emergency ?? null,
    hospital: shoot.callSheet?.hospital ?? null,
    groups: groups.filter(({ lines }) => lines.length > 0),
    defers:
      'This sheet is a reminder made from the plan, not a risk assessment by somebody licensed to make one. Local rules, the fire service, the owner of the ground and licensed practice go before it. What is missing here, write in.',
  }
}
