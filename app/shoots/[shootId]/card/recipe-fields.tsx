'use client'
import { Fragment, useId } from 'react'
import { FOODS } from '@/lib/card/foods'
import { ingredientLine } from '@/lib/card/ingredients'
import { isTheMeat } from '@/lib/card/the-meat'
import { CUSTOM } from '@/lib/model/custom-cut'
import { type Animal, cutById } from '@/lib/model/cuts'
import type { Allergen } from '@/lib/plan/allergens'
import { removeAt, setAt, valueAt } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import type { Problem } from '@/lib/refusals'
import { Fault } from '../../../ui/fault'
import { Field } from '../../../ui/field'
import { UndoAt } from '../../../ui/undo-line'
import {
  addIngredient,
  elseToHave,
  elseWhy,
  ingredientWords,
  keepingNote,
  keepingNoteWhy,
  servesWhy,
  servesWords,
  youNeed,
} from '../../../words/card'
import { takenOut } from '../../../words/shared'
import { asText } from '../../document-fields'
import type { Actions } from '../../use-actions'
import { AllergenFields } from './allergen-fields'
import { type IngredientDocument, IngredientHead, IngredientRow } from './ingredient-row'

interface RecipeFieldsProps {
  document: ShootDocument
  change: (document: ShootDocument) => void
  taken: Actions
  problems: readonly Problem[]
}
const listAt = <T,>(document: ShootDocument, pointer: string): readonly T[] => {
  const value = valueAt(document, pointer)
  return Array.isArray(value) ? value : []
}
/** What a file holds may be as wrong as a person wrote it. */
const asWritten = ({ what, much, food }: Partial<IngredientDocument>): IngredientDocument => ({
  what: asText(what),
  much: asText(much),
  food: asText(food),
})
/** The names by which an ingredient is the roast itself. */
function roastOf(document: ShootDocument): { readonly cut: string; readonly animal: Animal } | undefined {
  const id = asText(valueAt(document, '/cooks/0/roast/cut'))
  if (id !== CUSTOM) {
    const known = cutById(id)
    return known && { cut: known.name, animal: known.animal }
  }
  const own = '/cooks/0/roast/custom'
  const [cut, animal] = ['name', 'animal'].map((key) => asText(valueAt(document, `${own}/${key}`)))
  return cut && animal ? { cut, animal: animal as Animal } : undefined
}
const under = (pointer: string, at: string) => pointer === at || pointer.startsWith(`${at}/`)
/** Empty means: not said, so the key goes. */
const written = (document: ShootDocument, pointer: string, value: string | number | readonly unknown[]) =>
  value === '' || (Array.isArray(value) && value.length === 0)
    ? removeAt(document, pointer)
    : setAt(document, pointer, value)
const asNumber = (text: string) => (text.trim() === '' || Number.isNaN(Number(text)) ? text.trim() : Number(text))

/** What the forecast knows nothing of: servings, what goes in, what has to be named, how it keeps. */
export function RecipeFields({ document, change, taken, problems }: RecipeFieldsProps) {
  const foods = useId()
  const ingredients = listAt<Partial<IngredientDocument>>(document, '/card/ingredients').map(asWritten)
  const lines = ingredients.map(({ food, ...rest }) => ingredientLine({ ...rest, food: food || undefined }))
  const faultAt = (pointer: string) => problems.find((problem) => under(problem.pointer, pointer))?.sentence
  const set = (pointer: string, value: string | number | readonly unknown[]) =>
    change(written(document, pointer, value))
  const serves = valueAt(document, '/card/serves')
  const roast = roastOf(document)
  return (
    <section aria-label={youNeed} className="mt-10">
      <h2>{youNeed}</h2>
      <datalist id={foods}>
        {FOODS.map(({ name }) => (
          <option key={name} value={name} />
        ))}
      </datalist>
      <div className="max-w-xs">
        <Field
          label={servesWords}
          value={serves === undefined ? '' : String(serves)}
          fault={faultAt('/card/serves')}
          why={servesWhy}
          onChange={(text) => set('/card/serves', asNumber(text))}
        />
      </div>
      <IngredientHead />
      {ingredients.map((ingredient, i) => {
        const at = `/card/ingredients/${i}`
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place in the document
          <Fragment key={i}>
            <UndoAt taken={taken} at={at} />
            <IngredientRow
              ingredient={ingredient}
              nth={i + 1}
              roast={roast !== undefined && isTheMeat(ingredient.what, roast)}
              foods={foods}
              fault={(key) => faultAt(`${at}/${key}`)}
              change={(key, text) =>
                change(key === 'food' ? written(document, `${at}/food`, text) : setAt(document, `${at}/${key}`, text))
              }
              remove={() => taken.act(takenOut(ingredient.what || ingredientWords(i + 1)), removeAt(document, at), at)}
            />
          </Fragment>
        )
      })}
      <UndoAt taken={taken} at={`/card/ingredients/${ingredients.length}`} />
      <button
        type="button"
        className="btn mt-4"
        onClick={() =>
          change(
            setAt(document, '/card/ingredients', [...listAt(document, '/card/ingredients'), { what: '', much: '' }]),
          )
        }
      >
        {addIngredient}
      </button>
      <AllergenFields
        lines={lines}
        declared={listAt<Allergen>(document, '/card/allergens')}
        fault={faultAt('/card/allergens')}
        change={(declared) => set('/card/allergens', declared)}
      />
      <div className="mt-4 grid gap-x-8 md:grid-cols-2">
        <Area
          label={elseToHave}
          why={elseWhy}
          value={listAt<string>(document, '/card/kit').join('\n')}
          fault={faultAt('/card/kit')}
          on={(text) => set('/card/kit', text === '' ? '' : text.split('\n'))}
        />
        <Area
          label={keepingNote}
          why={keepingNoteWhy}
          value={String(valueAt(document, '/card/storage') ?? '')}
          fault={faultAt('/card/storage')}
          on={(text) => set('/card/storage', text)}
        />
      </div>
    </section>
  )
}

interface AreaProps {
  label: string
  why: string
  value: string
  fault: string | undefined
  on: (text: string) => void
}
function Area({ label, why, value, fault, on }: AreaProps) {
  const id = useId()
  return (
    <div className={fault ? 'field wrong' : 'field'}>
      <label htmlFor={id}>{label}</label>
      <textarea
        id={id}
        rows={3}
        value={value}
        aria-invalid={fault ? true : undefined}
        aria-describedby={`${id}-why${fault ? ` ${id}-fault` : ''}`}
        onChange={(event) => on(event.target.value)}
      />
      <Fault id={`${id}-fault`}>{fault}</Fault>
      <span className="why" id={`${id}-why`}>
        {why}
      </span>
    </div>
  )
}
