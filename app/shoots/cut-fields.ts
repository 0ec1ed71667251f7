import { CUSTOM, CUSTOM_SHAPES } from '@/lib/model/custom-cut'
import { ANIMALS } from '@/lib/model/cut'
import { CUTS, cutById } from '@/lib/model/cuts'
import { removeAt, setAt, valueAt } from '@/lib/plan/edit'
import * as words from '../words/plan'
import { type DocumentField, optional, plain } from './document-fields'

const OPTIONS = [...CUTS.map((cut) => [cut.id, cut.name] as const), [CUSTOM, words.ownCut] as const]

/** The cut. One of one's own brings its description along, begun with the animal that stood there before. */
export function cutField(cook: number, own: boolean): DocumentField {
  const roast = `/cooks/${cook}/roast`
  return plain(`cut-${cook}`, words.cut, `${roast}/cut`, {
    why: words.cutWhy,
    options: OPTIONS,
    pointers: own ? [`${roast}/cut`] : [`${roast}/cut`, `${roast}/custom`],
    write: (document, text) => {
      const before = cutById(String(valueAt(document, `${roast}/cut`)))
      const chosen = setAt(document, `${roast}/cut`, text)
      if (text !== CUSTOM) return removeAt(chosen, `${roast}/custom`)
      if (valueAt(document, `${roast}/custom`) !== undefined) return chosen
      return setAt(chosen, `${roast}/custom`, {
        name: words.ownNameIs,
        animal: before?.animal ?? 'beef',
        shape: 'oval',
      })
    },
  })
}

const ANIMAL_OPTIONS = ANIMALS.map((animal) => [animal, animal] as const)
const SHAPE_OPTIONS = CUSTOM_SHAPES.map((shape) => [shape, words.shapes[shape]] as const)

/** What a cut of one's own is made of; the thickness stands with the other measures. */
export function ownCutFields(cook: number): readonly DocumentField[] {
  const custom = `/cooks/${cook}/roast/custom`
  return [
    plain(`own-name-${cook}`, words.ownName, `${custom}/name`),
    plain(`own-animal-${cook}`, words.animal, `${custom}/animal`, { options: ANIMAL_OPTIONS }),
    plain(`own-shape-${cook}`, words.shape, `${custom}/shape`, { options: SHAPE_OPTIONS }),
    optional(`own-fat-${cook}`, words.fat, `${custom}/fat`, {
      why: words.fatWhy,
    }),
    optional(`own-bone-${cook}`, words.bone, `${custom}/bone`, {
      why: words.boneWhy,
      pointers: [`${custom}/bone`, `${custom}/boneAt`],
    }),
  ]
}
