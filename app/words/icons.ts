/** What each drawn sign is called, where no word stands beside it. */
export const iconNames = {
  tick: 'borne out',
  'tick-with-care': 'borne out with care',
  crossed: 'contradicted',
  unchecked: 'cannot be checked',
  moment: 'a moment',
  window: 'its window, early to late',
  happened: 'it happened',
  'what-if': 'a what-if',
  'shot-fixed': 'a shot that is fixed',
  'shot-free': 'a free shot',
  'shot-tentative': 'a tentative shot',
} as const
