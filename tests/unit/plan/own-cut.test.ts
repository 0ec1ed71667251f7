import { describe, expect, test } from 'vitest'
import { cutField } from '../../../app/shoots/cut-fields'
import { valueAt } from '../../../lib/plan/edit'
import type { ShootDocument } from '../../../lib/plan/shoot'
import { faults, lamb, lambWith, read } from './shoots'

const ROAST = '/cooks/0/roast'
const SADDLE = { name: 'saddle of hogget', animal: 'lamb', shape: 'oval', fat: '15 %', bone: '20 %', boneAt: 'ribs' }
const own = (changes: Record<string, unknown> = {}) =>
  lambWith({ [`${ROAST}/cut`]: 'custom', [`${ROAST}/custom`]: SADDLE, [`${ROAST}/thickness`]: '9 cm', ...changes })

describe('a cut of one’s own in the shoot file', () => {
  test('is read with its shares', () => {
    const { roast } = read(own()).cooks[0] as ReturnType<typeof read>['cooks'][number]
    expect(roast.custom).toEqual({ ...SADDLE, fat: 0.15, bone: 0.2 })
  })
  test('animal, name and shape suffice', () =>
    expect(faults(own({ [`${ROAST}/custom`]: { name: 'Shin', animal: 'beef', shape: 'round' } }))).toEqual([]))
  test.each<[string, Record<string, unknown>, string]>([
    [
      'no description',
      { [`${ROAST}/custom`]: undefined },
      `${ROAST}/custom: A cut of your own needs to be described. Write "custom": { "name": "saddle of hogget", "animal": "lamb", "shape": "oval" }.`,
    ],
    [
      'no thickness',
      { [`${ROAST}/thickness`]: undefined },
      `${ROAST}/thickness: A cut of your own needs its thickness. Measure the thickest place as it lies, and write it such as "9 cm".`,
    ],
    [
      'a thickness that its weight does not fill',
      { [`${ROAST}/thickness`]: '30 cm' },
      `${ROAST}/thickness: 30 cm thick and 42 cm wide, 3.2 kg would be 3.3 cm long. Check the weight and the thickness.`,
    ],
    [
      'an unknown animal',
      { [`${ROAST}/custom/animal`]: 'lam' },
      `${ROAST}/custom/animal: "lam" is not an animal. Did you mean "lamb"?`,
    ],
    [
      'an unknown shape',
      { [`${ROAST}/custom/shape`]: 'cubist' },
      `${ROAST}/custom/shape: "cubist" is not a shape. Write round, oval, tapering, block or flat.`,
    ],
    ['a bare share', { [`${ROAST}/custom/fat`]: 0.1 }, `${ROAST}/custom/fat: 0.1 what? Write "10 %" or "0.1 %".`],
    [
      'all fat',
      { [`${ROAST}/custom/fat`]: '90 %' },
      `${ROAST}/custom/fat: 90 % is out of range here. Write the share of fat in the meat from 0 % to 60 %, such as "10 %".`,
    ],
    [
      'all bone',
      { [`${ROAST}/custom/bone`]: '80 %' },
      `${ROAST}/custom/bone: 80 % is out of range here. Write the share of bone from 0 % to 50 %, such as "15 %".`,
    ],
    [
      'a place for no bone',
      { [`${ROAST}/custom/bone`]: undefined },
      `${ROAST}/custom/boneAt: This says where the bone lies, but not how much there is. Write "bone": "15 %" beside it.`,
    ],
    [
      'no name',
      { [`${ROAST}/custom/name`]: '' },
      `${ROAST}/custom/name: The name of the cut is empty. Write at least one letter.`,
    ],
    [
      'an unknown key',
      { [`${ROAST}/custom/colour`]: 'red' },
      `${ROAST}/custom/colour: "colour" is not known here. Known are name, animal, shape, fat, bone and boneAt.`,
    ],
    [
      'a description of a cut in the catalogue',
      { [`${ROAST}/cut`]: 'lamb-leg-bone-in', [`${ROAST}/thickness`]: '12 cm' },
      `${ROAST}/custom: Leave this out: leg of lamb, bone in, is in the catalogue. For a cut of your own write "cut": "custom".`,
    ],
  ])('%s is told at its field', (_, changes, sentence) => expect(faults(own(changes))).toEqual([sentence]))
  test('the word misspelt is understood', () =>
    expect(faults(own({ [`${ROAST}/cut`]: 'costum', [`${ROAST}/custom`]: undefined }))).toEqual([
      `${ROAST}/cut: "costum" is not in the catalogue of cuts. Did you mean "custom"?`,
    ]))
})

describe('the form', () => {
  const field = cutField(0, false)
  test('choosing a cut of one’s own begins its description; going back to the catalogue takes it out', () => {
    const begun = field.write(lamb(), 'custom')
    expect(valueAt(begun, `${ROAST}/custom`)).toEqual({ name: 'a cut of my own', animal: 'lamb', shape: 'oval' })
    expect(faults(begun)).toEqual([])
    const back: ShootDocument = field.write(begun, 'beef-brisket')
    expect(valueAt(back, `${ROAST}/custom`)).toBeUndefined()
  })
})
