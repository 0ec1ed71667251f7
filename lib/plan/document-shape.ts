import type { ShootDocument } from './shoot'

type Members = Record<string, unknown>
const isObject = (value: unknown): value is Members =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** A list of objects, or nothing at all. */
const listOf = (value: unknown, each: (member: Members) => boolean) =>
  value === undefined || (Array.isArray(value) && value.every((member) => isObject(member) && each(member)))
const named = ({ id }: Members) => typeof id === 'string'

function isCook(cook: Members): boolean {
  return (
    named(cook) &&
    isObject(cook.roast) &&
    isObject(cook.cooker) &&
    Array.isArray(cook.stages) &&
    listOf(cook.stages, (stage) => typeof stage.do === 'string')
  )
}

/**
 * Whether a document kept from before has the shape that forms can show: lists where lists belong. Values in it may be as
 * wrong as a person typed them.
 */
export function hasShape(document: unknown): document is ShootDocument {
  if (!isObject(document) || !Array.isArray(document.cooks) || document.cooks.length === 0) return false
  const card = document.card ?? {}
  const callSheet = document.callSheet ?? {}
  return (
    document.emberslate === 1 &&
    listOf(document.cooks, isCook) &&
    ['people', 'cameras', 'shots', 'tasks'].every((key) => listOf(document[key], named)) &&
    isObject(card) &&
    listOf(card.steps, (step) => named(step) && typeof step.text === 'string' && listOf(step.override, () => true)) &&
    listOf(card.ingredients, () => true) &&
    isObject(callSheet) &&
    listOf(callSheet.contacts, () => true)
  )
}
