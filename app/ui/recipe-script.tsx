import { inScript, type LinkedThing } from '@/lib/export/recipe-json-ld'

/** The recipe for search engines, inside the page. Data, no script: the page's policy lets it stand, and nothing in it can end it. */
export const RecipeScript = ({ recipe }: { recipe: LinkedThing }) => (
  // biome-ignore lint/security/noDangerouslySetInnerHtml: JSON whose "<", ">" and "&" are escaped
  <script type="application/ld+json" dangerouslySetInnerHTML={{ __html: inScript(recipe) }} />
)
