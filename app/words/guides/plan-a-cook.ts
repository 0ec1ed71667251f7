import type { Guide } from './guide'

export const planACook: Guide = {
  id: 'plan-a-cook',
  title: 'Plan a cook',
  gives: 'When to light, when the meat goes on, when it is sliced, and a day with its shots laid out round that.',
  steps: [
    { says: 'On the first page press [New shoot].' },
    {
      says: 'Answer what it asks, each with its unit: 3.2 kg or 7 lb.',
      picture: {
        name: 'plan-questions',
        alt: 'The page of a new shoot: the questions on the left, on the right the sentence that says when to light and when the first slice is, above the heat line.',
      },
    },
    {
      says: 'Measure the thickness at the thickest place, as it lies: it decides more than the weight.',
      caution: 'Frozen or part-frozen meat is not forecast. Thaw it first, in the fridge.',
    },
    {
      says: 'Read the answer as you type: the bar at each moment is its window, and nine cooks of ten have it inside.',
      caution:
        'Where the plan ends below the food-safety authority’s minimum it says so. Your local authority comes first.',
    },
    {
      says: 'Press [Save and lay out the day]: the shots stand round the moments, in the order that people can follow.',
      picture: {
        name: 'plan-day',
        alt: 'The day as a picture: daylight on top, the meat’s temperature with its band, eleven moments with their windows, and beneath them what each camera and person does when.',
      },
    },
    { says: 'On [Day] change shots, people and hours; what does not fit is told with what would save it.' },
    { says: 'Press [Rehearse the day] to see it played, then print the call sheet from [Calls].' },
  ],
  wrong: [
    { sign: '3.2 what?', todo: 'The unit is missing. Write “3.2 kg” or “7 lb”.' },
    {
      sign: 'The window is wide',
      todo: 'Measure the thickness instead of leaving it empty. The page names what narrows the window most.',
    },
    {
      sign: 'A shot is dropped',
      todo: 'Its line says why, and what would save it. [Undo the last change] takes back.',
    },
  ],
}
