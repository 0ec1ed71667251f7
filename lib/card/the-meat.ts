import type { Animal } from '../model/cut'
import { foodNamed } from './foods'

/** Made from it or for it: what is in those is not known, and never passed over as meat. */
const MADE_OF_IT =
  /\b(?:dripping|fat|lard|stock|broth|bouillon|gravy|sauce|bones|rub|seasoning|spices?|brine|marinade|marinated|stuffing|stuffed|glazed?|crumbed|breaded|crust|sausages?)\b/i
/** An ingredient that is the roast itself: "leg of lamb", "boned lamb". */
export function isTheMeat(what: string, { cut, animal }: { readonly cut: string; readonly animal: Animal }): boolean {
  if (foodNamed(what) !== null || MADE_OF_IT.test(what)) return false
  const names = [cut.split(',')[0] ?? cut, animal].map((name) => name.toLowerCase())
  return names.some((name) => what.toLowerCase().includes(name))
}
