import { useId } from 'react'
import { foodNamed } from '@/lib/card/foods'
import { type IngredientLine, ingredientLine } from '@/lib/card/ingredients'
import { whyUnread } from '@/lib/card/read-amount'

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
    <fieldset className="border-t border-rule pt-1 pb-3">
      <legend className="sr-only">Ingredient {nth}</legend>
      <div className="grid grid-cols-[1fr_auto] items-end gap-x-4 sm:grid-cols-[1fr_11rem_auto]">
        <div className="col-span-2 sm:col-span-1">
          <Written
            label={`Ingredient ${nth}`}
            value={what}
            list={foods}
            fault={fault('what')}
            on={(t) => change('what', t)}
          />
        </div>
        <Written label={`How much of ${nth}`} value={much} fault={fault('much')} on={(t) => change('much', t)} />
        <button type="button" className="textlink mb-3 min-h-11" onClick={remove}>
          Take out<span className="sr-only"> ingredient {nth}</span>
        </button>
      </div>
      <Printed line={line} why={whyUnread(much)} roast={roast} />
      {asksFood && (
        <div className="max-w-sm">
          <Written
            label={`Ingredient ${nth} counts as`}
            value={food}
            list={foods}
            fault={fault('food')}
            on={(t) => change('food', t)}
          />
        </div>
      )}
    </fieldset>
  )
}

interface WrittenProps {
  readonly label: string
  readonly value: string
  readonly list?: string
  readonly fault: string | undefined
  readonly on: (text: string) => void
}
function Written({ label, value, list, fault, on }: WrittenProps) {
  const id = useId()
  return (
    <div className={fault ? 'field wrong' : 'field'}>
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
      {fault && (
        <span className="says" id={`${id}-fault`} role="alert">
          {fault}
        </span>
      )}
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
          Prints as <b className="text-ink">{amounts.join(' / ')}</b>.{' '}
        </>
      ) : (
        'Prints without an amount. '
      )}
      {why && `${why} `}
      {roast ? 'The roast itself: reckoned by the plan’s own weight.' : knownWords(line)}
    </p>
  )
}
function knownWords({ food, noFood, grams }: IngredientLine): string {
  if (noFood) return 'Not food, so not in the nutrition.'
  if (!food) return 'Not one of our foods: its allergens and nutrition are not known. If it is made of one, say which.'
  const from = food.number ? ` (USDA ${food.number}${food.fromMemory ? ', from memory' : ''})` : ''
  const contains = food.allergens.length > 0 ? ` Contains ${food.allergens.join(', ')}.` : ''
  const left = !food.per100g ? ' Its composition is not known' : grams === null ? ' What it weighs is not known' : ''
  return `Known as ${food.name}${from}.${contains}${left ? `${left}, so it is not in the nutrition.` : ''}`
}
