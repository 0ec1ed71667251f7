import { CUSTOM, CUSTOM_SHAPES } from '@/lib/model/custom-cut'
import { ANIMALS } from '@/lib/model/cut'
import { CUTS, cutById } from '@/lib/model/cuts'
import { removeAt, setAt, valueAt } from '@/lib/plan/edit'
import { type DocumentField, optional, plain } from './document-fields'

const OPTIONS = [...CUTS.map((cut) => [cut.id, cut.name] as const), [CUSTOM, 'a cut of your own'] as const]

/** The cut. One of one's own brings its description along, begun with the animal that stood there before. */
export function cutField(cook: number, own: boolean): DocumentField {
  const roast = `/cooks/${cook}/roast`
  return plain(`cut-${cook}`, 'Cut', `${roast}/cut`, {
    options: OPTIONS,
    pointers: own ? [`${roast}/cut`] : [`${roast}/cut`, `${roast}/custom`],
    write: (document, text) => {
      const before = cutById(String(valueAt(document, `${roast}/cut`)))
      const chosen = setAt(document, `${roast}/cut`, text)
      if (text !== CUSTOM) return removeAt(chosen, `${roast}/custom`)
      if (valueAt(document, `${roast}/custom`) !== undefined) return chosen
      return setAt(chosen, `${roast}/custom`, {
        name: 'a cut of my own',
        animal: before?.animal ?? 'beef',
        shape: 'oval',
      })
    },
  })
}

const ANIMAL_OPTIONS = ANIMALS.map((animal) => [animal, animal] as const)
const SHAPE_WORDS: Readonly<Record<(typeof CUSTOM_SHAPES)[number], string>> = {
  round: 'round, like a rolled joint',
  oval: 'oval, like a loin',
  tapering: 'tapering, like a leg',
  block: 'a block, like a shoulder',
  flat: 'flat, like a brisket',
}
const SHAPE_OPTIONS = CUSTOM_SHAPES.map((shape) => [shape, SHAPE_WORDS[shape]] as const)

/** What a cut of one's own is made of; the thickness stands with the other measures. */
export function ownCutFields(cook: number): readonly DocumentField[] {
  const custom = `/cooks/${cook}/roast/custom`
  return [
    plain(`own-name-${cook}`, 'What it is called', `${custom}/name`),
    plain(`own-animal-${cook}`, 'Animal', `${custom}/animal`, { options: ANIMAL_OPTIONS }),
    plain(`own-shape-${cook}`, 'Shape', `${custom}/shape`, { options: SHAPE_OPTIONS }),
    optional(`own-fat-${cook}`, 'Fat in the meat', `${custom}/fat`, {
      why: 'A share, such as 15 %. Empty means lean.',
    }),
    optional(`own-bone-${cook}`, 'Bone', `${custom}/bone`, {
      why: 'A share of the weight, such as 20 %. Empty means none.',
      pointers: [`${custom}/bone`, `${custom}/boneAt`],
    }),
  ]
}
