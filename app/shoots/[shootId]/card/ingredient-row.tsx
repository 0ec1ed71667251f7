import { useId } from 'react'
import { foodNamed } from '@/lib/card/foods'
import { type IngredientLine, ingredientLine } from '@/lib/card/ingredients'
import { whyUnread } from '@/lib/card/read-amount'
import { Fault } from '../../../ui/fault'
import {
  amountColumn,
  howMuch,
  ingredientColumn,
  ingredientCounts,
  ingredientNamed,
  ingredientWords,
  isTheRoast,
  itsCompositionIsNotKnown,
  knownAs,
  notFood,
  notOneOfOurFoods,
  printsAs,
  printsColumn,
  printsWithoutAmount,
  takeOut,
  whatItWeighs,
} from '../../../words/card'

export interface IngredientDocument {
  readonly what: string
  readonly much: string
  readonly food: string
}
interface IngredientRowProps {
  readonly ingredient: IngredientDocument
  readonly nth: number
  /** It is the roast itself. */
  readonly roast: boolean
  /** The id of the list of foods, one for all rows. */
  readonly foods: string
  readonly fault: (key: 'what' | 'much' | 'food') => string | undefined
  readonly change: (key: 'what' | 'much' | 'food', text: string) => void
  readonly remove: () => void
}

/** One ingredient as it is written, and under it how it will print and whether its food is known. */
export function IngredientRow({ ingredient, nth, roast, foods, fault, change, remove }: IngredientRowProps) {
  const { what, much, food } = ingredient
  const line = ingredientLine({ what, much, food: food || undefined })
  const asksFood = line.what !== '' && foodNamed(what) === null && !line.noFood && !roast
  return (
    <fieldset className="ingredient">
      <legend className="sr-only">{ingredientWords(nth)}</legend>
      <Written
        label={ingredientWords(nth)}
        value={what}
        list={foods}
        fault={fault('what')}
        on={(t) => change('what', t)}
      />
      <Written label={howMuch(nth)} value={much} fault={fault('much')} on={(t) => change('much', t)} />
      <div className="prints">
        <Printed line={line} why={whyUnread(much)} roast={roast} />
        {asksFood && (
          <Written
            label={ingredientCounts(nth)}
            value={food}
            list={foods}
            fault={fault('food')}
            on={(t) => change('food', t)}
            counts
          />
        )}
      </div>
      <button type="button" className="textlink out" onClick={remove}>
        {takeOut}
        <span className="sr-only"> {ingredientNamed(nth)}</span>
      </button>
    </fieldset>
  )
}

/** Over the rows where they stand as a table; each field has its own label besides. */
export const IngredientHead = () => (
  <div className="ingredient-head" aria-hidden="true">
    <span>{ingredientColumn}</span>
    <span>{amountColumn}</span>
    <span>{printsColumn}</span>
  </div>
)

interface WrittenProps {
  readonly label: string
  readonly value: string
  readonly list?: string
  readonly fault: string | undefined
  readonly on: (text: string) => void
  /** Stands among the words about a row, so its label is seen. */
  readonly counts?: boolean
}
function Written({ label, value, list, fault, on, counts }: WrittenProps) {
  const id = useId()
  return (
    <div className={`field ${fault ? 'wrong' : ''} ${counts ? 'counts' : ''}`}>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        value={value}
        list={list}
        autoComplete="off"
        aria-invalid={fault ? true : undefined}
        aria-describedby={fault ? `${id}-fault` : undefined}
        onChange={(event) => on(event.target.value)}
      />
      <Fault id={`${id}-fault`}>{fault}</Fault>
    </div>
  )
}

interface PrintedProps {
  readonly line: IngredientLine
  readonly why: string | null
  readonly roast: boolean
}
function Printed({ line, why, roast }: PrintedProps) {
  if (line.what === '' && line.metric === '') return null
  const amounts = [line.metric, line.us].filter(Boolean)
  return (
    <p className="small">
      {amounts.length > 0 ? (
        <>
          {printsAs} <b className="text-ink">{amounts.join(' / ')}</b>.{' '}
        </>
      ) : (
        printsWithoutAmount
      )}
      {why && `${why} `}
      {roast ? isTheRoast : knownWords(line)}
    </p>
  )
}
function knownWords({ food, noFood, grams }: IngredientLine): string {
  if (noFood) return notFood
  if (!food) return notOneOfOurFoods
  const from = food.number ? ` (USDA ${food.number}${food.fromMemory ? ', from memory' : ''})` : ''
  const contains = food.allergens.length > 0 ? ` Contains ${food.allergens.join(', ')}.` : ''
  const left = !food.per100g ? itsCompositionIsNotKnown : grams === null ? whatItWeighs : ''
  return knownAs(food.name, from, contains, left ? `${left}, so it is not in the nutrition.` : '')
}
