'use client'
import { removeAt, setAt, valueAt } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import type { Problem } from '@/lib/refusals'
import { Field } from '../../../ui/field'
import { type DocumentField, fieldAt, optional, plain } from '../../document-fields'

interface RecipeFieldsProps {
  document: ShootDocument
  change: (document: ShootDocument) => void
  problems: readonly Problem[]
}
type Ingredient = { what: string; much: string }
const ingredientsOf = (document: ShootDocument) =>
  (valueAt(document, '/card/ingredients') as Ingredient[] | undefined) ?? []

const serves = optional('serves', 'Serves', '/card/serves', {
  write: (document, text) =>
    text.trim() === ''
      ? removeAt(document, '/card/serves')
      : setAt(document, '/card/serves', Number.isNaN(Number(text)) ? text : Number(text)),
})

/** What the forecast knows nothing of: servings and what else is needed. */
export function RecipeFields({ document, change, problems }: RecipeFieldsProps) {
  const ingredients = ingredientsOf(document)
  const control = (field: DocumentField) => (
    <Field
      key={field.key}
      label={field.label}
      value={field.read(document)}
      fault={problems.find((problem) => fieldAt([field], problem.pointer))?.sentence}
      onChange={(text) => change(field.write(document, text))}
    />
  )
  return (
    <section aria-label="You need" className="mt-8">
      <h2>You need</h2>
      <div className="max-w-xs">{control(serves)}</div>
      {ingredients.map((_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place in the document
        <div key={i} className="grid grid-cols-[1fr_8rem_auto] items-end gap-4">
          {control(plain(`what-${i}`, `Ingredient ${i + 1}`, `/card/ingredients/${i}/what`))}
          {control(plain(`much-${i}`, `How much of ${i + 1}`, `/card/ingredients/${i}/much`))}
          <button
            type="button"
            className="textlink mb-4"
            onClick={() => change(removeAt(document, `/card/ingredients/${i}`))}
          >
            Take out
          </button>
        </div>
      ))}
      <button
        type="button"
        className="btn mt-2"
        onClick={() => change(setAt(document, '/card/ingredients', [...ingredients, { what: '', much: '' }]))}
      >
        Add an ingredient
      </button>
    </section>
  )
}
