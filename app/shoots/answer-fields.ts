import { COOKER_KINDS } from '@/lib/model/cook'
import { CUSTOM } from '@/lib/model/custom-cut'
import { cutById } from '@/lib/model/cuts'
import { valueAt } from '@/lib/plan/edit'
import { doneCutAt, followed, howDoneAt, withHowDone } from '@/lib/plan/follow-answers'
import { doneChoices, type HowDone } from '@/lib/plan/how-done'
import { cookerName } from '@/lib/plan/moments'
import type { ShootDocument } from '@/lib/plan/shoot'
import { formatLength, metres, readQuantity, type UnitSystem } from '@/lib/units'
import * as words from '../words/plan'
import { cutField, ownCutFields } from './cut-fields'
import { type DocumentField, type FieldGroup, measuring, optional, plain } from './document-fields'
import { forgotten, type RememberedCooker, rememberedFields } from './remembered-field'

const COOKERS = COOKER_KINDS.map((kind) => [kind, cookerName(kind)] as const)
/** A cook whose targets are nobody's word. */
const BY_TEMPERATURES = 'by-temperatures'

/** The questions that decide most about a cook; heat, sear, targets and rest follow what is answered here. */
export function answerGroup(
  document: ShootDocument,
  cook: number,
  name: string,
  { cookers, units }: { readonly cookers: readonly RememberedCooker[]; readonly units: UnitSystem },
): FieldGroup {
  const roast = `/cooks/${cook}/roast`
  const own = valueAt(document, `${roast}/cut`) === CUSTOM
  return {
    key: `roast-${cook}`,
    title: words.roast(name),
    fields: [
      following(cutField(cook, own), cook),
      ...(own ? ownCutFields(cook) : []),
      plain(`mass-${cook}`, words.weight, `${roast}/mass`, { why: words.weightWhy }),
      optional(`thickness-${cook}`, words.thickness, `${roast}/thickness`, {
        why: words.thicknessWhy(own ? undefined : typicalThickness(document, cook, units)),
        gain: measuring(cook, 'thickness'),
      }),
      following(cookerField(document, cook), cook),
      ...rememberedFields(document, cook, cookers),
      howDoneField(document, cook, units),
    ],
  }
}

const following = (field: DocumentField, cook: number): DocumentField => ({
  ...field,
  write: (document, text) => followed(document, field.write(document, text), cook),
})

const stageAt = (document: ShootDocument, cook: number, kind: string) => {
  const stages = valueAt(document, `/cooks/${cook}/stages`)
  const index = Array.isArray(stages) ? stages.findIndex((stage) => valueAt(stage, '/do') === kind) : -1
  return `/cooks/${cook}/stages/${index}`
}

function cookerField(document: ShootDocument, cook: number): DocumentField {
  const at = `/cooks/${cook}/cooker/kind`
  return plain(`cooker-${cook}`, words.cooker, at, {
    why: words.cookerWhy,
    options: COOKERS,
    gain: measuring(cook, 'cooker'),
    cautions: [`${stageAt(document, cook, 'sear')}/at`],
    // What another cooker taught is not true of this one.
    write: (edited, text) => plain('', '', at).write(forgotten(edited, cook), text),
  })
}

function howDoneField(document: ShootDocument, cook: number, units: UnitSystem): DocumentField {
  const cut = doneCutAt(document, cook)
  const choices = (cut ? doneChoices(cut, units) : []).map((choice) => [choice.id, choice.words] as const)
  const byFigures = howDoneAt(document, cook) === undefined
  return {
    key: `done-${cook}`,
    label: words.howDone,
    why: words.howDoneWhy,
    pointers: [`/cooks/${cook}/target`],
    cautions: ['roast', 'sear'].map((kind) => `${stageAt(document, cook, kind)}/until/core`),
    options: byFigures ? [[BY_TEMPERATURES, words.asTemperaturesSay], ...choices] : choices,
    read: (edited) => howDoneAt(edited, cook) ?? BY_TEMPERATURES,
    write: (edited, text) => (text === BY_TEMPERATURES ? edited : withHowDone(edited, cook, text as HowDone)),
  }
}

/** How thick such a cut of this weight usually lies. */
function typicalThickness(document: ShootDocument, cook: number, units: UnitSystem): string | undefined {
  const cut = cutById(String(valueAt(document, `/cooks/${cook}/roast/cut`)))
  const mass = readQuantity(valueAt(document, `/cooks/${cook}/roast/mass`), 'mass')
  if (!cut || !mass.ok || mass.si <= 0) return undefined
  const thick = cut.thicknessM * (mass.si / cut.atMassKg) ** cut.growth
  const rounded = units === 'us' ? Math.round(thick / 0.0127) * 0.0127 : Math.round(thick * 100) / 100
  return formatLength(metres(rounded), units)
}
