import { allergenLists, allergensIn } from '@/lib/card/allergens'
import type { IngredientLine } from '@/lib/card/ingredients'
import { ALLERGENS, type Allergen } from '@/lib/plan/allergens'
import { Fault } from '../../../ui/fault'
import { allergensWhy, allergensWords, inWords } from '../../../words/card'

interface AllergenFieldsProps {
  readonly lines: readonly IngredientLine[]
  readonly declared: readonly Allergen[]
  readonly fault: string | undefined
  readonly change: (declared: readonly Allergen[]) => void
}

/** What has to be named: found in the ingredients, or declared by the author. Nothing is ever called free of anything. */
export function AllergenFields({ lines, declared, fault, change }: AllergenFieldsProps) {
  const found = allergensIn({ lines, declared: [], isFish: false })
  const fromOf = (allergen: Allergen) =>
    lines.filter(({ food }) => food?.allergens.includes(allergen)).map(({ what }) => what)
  const toggle = (allergen: Allergen) =>
    change(declared.includes(allergen) ? declared.filter((a) => a !== allergen) : [...declared, allergen])
  return (
    <fieldset className="mt-6">
      <legend className="font-bold">{allergensWords}</legend>
      <p className="small">{allergensWhy}</p>
      <Fault>{fault}</Fault>
      <div className="mt-2 grid grid-cols-2 gap-x-4 sm:grid-cols-3 lg:grid-cols-5">
        {ALLERGENS.map((allergen) => (
          <label key={allergen} className="flex min-h-11 items-center gap-3">
            <input
              type="checkbox"
              className="size-5 shrink-0"
              style={{ accentColor: 'var(--ink)' }}
              checked={found.includes(allergen) || declared.includes(allergen)}
              disabled={found.includes(allergen)}
              onChange={() => toggle(allergen)}
            />
            <span>
              {allergen}
              <span className="small block leading-tight">
                {found.includes(allergen) ? inWords(fromOf(allergen).join(', ')) : allergenLists(allergen)}
              </span>
            </span>
          </label>
        ))}
      </div>
    </fieldset>
  )
}
