/** What a word of the trade, of ours or of the physics means, in one sentence each. */
export interface Entry {
  readonly term: string
  readonly says: string
}

export const GLOSSARY = [
  // Filming
  { term: 'B-roll', says: 'Pictures without speech that are cut in over the story: smoke, hands, the fire.' },
  { term: 'call', says: 'Who has to be where, from when, for which shot.' },
  { term: 'call sheet', says: 'The day on paper: who comes when, and what is filmed in which order.' },
  { term: 'continuity', says: 'What must look the same from one shot to the next: level of a glass, fold of a cloth.' },
  { term: 'coverage', says: 'The angles and sizes in which one action is filmed, so that it can be cut.' },
  {
    term: 'golden hour',
    says: 'Early and late in the day, when the sun stands less than 6° high and its light is warm.',
  },
  { term: 'insert', says: 'A close picture of one thing, cut into a wider scene: a hand, a knife, a probe.' },
  { term: 'lead time', says: 'How long people need from the call until they can roll.' },
  { term: 'meal break', says: 'The crew eats and nothing is filmed; it is due so many hours after the call.' },
  { term: 'pick-up', says: 'A small shot filmed later to fill a gap or mend one that was missed.' },
  { term: 'piece to camera', says: 'The presenter speaks straight into the lens.' },
  { term: 'roll', says: 'The camera records.' },
  { term: 'setup', says: 'One place of the camera with its lens and light; changing it takes time.' },
  { term: 'slate', says: 'The number held before the camera, so that picture, sound and notes find each other.' },
  { term: 'standby', says: 'In place and ready, not yet rolling.' },
  { term: 'take', says: 'One recording of a shot, from roll to cut.' },
  { term: 'timecode', says: 'The running clock in the camera that names every picture.' },
  { term: 'turnaround', says: 'The hours between the end of one working day and the next call.' },
  { term: 'wrap', says: 'The end of the filming day; the page of that name looks back on it.' },
  // Cooking
  { term: 'carryover', says: 'How far the core still rises after the roast has left the heat.' },
  { term: 'core', says: 'The coldest place inside, near the middle and away from the bone.' },
  { term: 'crust', says: 'The outermost layer, dried and browned.' },
  { term: 'deflector', says: 'A plate between fire and grate, so that the roast sees no embers.' },
  { term: 'doneness', says: 'How far the inside is cooked, told by the highest temperature the core reaches.' },
  { term: 'grate', says: 'The rack the roast lies on; the cooker’s temperature is meant there, not in the lid.' },
  { term: 'indirect', says: 'Beside the fire, not over it: hot air cooks the roast, embers do not reach it.' },
  {
    term: 'pull temperature',
    says: 'What the core shows when the roast is to leave the heat; carryover does the rest.',
  },
  { term: 'rest', says: 'The time off the heat before the knife, while the core still rises and juices thicken.' },
  { term: 'reverse sear', says: 'Cooked gently first, browned at the end over the full fire.' },
  { term: 'sear', says: 'A short time on very great heat, for the crust.' },
  {
    term: 'stall',
    says: 'The core hardly rises for hours, since drying cools the surface about as fast as the air heats it.',
  },
  {
    term: 'twin roast',
    says: 'A second roast, started earlier or elsewhere, so that a finished one is there on time.',
  },
  { term: 'vent', says: 'An opening that lets air to the fire; wider means hotter.' },
  // Our own words
  { term: 'band', says: 'The shaded strip about a curve: in 90 cooks of 100 the temperature stays inside it.' },
  { term: 'caught', says: 'The moment was filmed.' },
  { term: 'chance', says: 'In how many cooks of 100 all goes as planned, counted over the cooks we reckoned.' },
  {
    term: 'claim',
    says: 'A statement on the card that can be checked: a time, a temperature, a colour, a word such as “safe”.',
  },
  {
    term: 'cooker memory',
    says: 'What the readings of earlier days taught about this cooker; the next forecast begins with it.',
  },
  { term: 'cut face', says: 'The slice as it is expected, drawn in the colours of its temperatures.' },
  { term: 'dropped', says: 'The shot was left out of the day.' },
  {
    term: 'early, likely, late',
    says: 'In 5 cooks of 100 it comes before early, in 50 before likely, in 95 before late.',
  },
  {
    term: 'finding',
    says: 'What the check says of a claim: borne out, contradicted or not to be checked, with figure and reason.',
  },
  { term: 'pinned', says: 'You have set this shot to a minute; it stays there however the cook goes.' },
  { term: 'heat line', says: 'The day in one picture: daylight, temperatures, moments and shots over the same hours.' },
  { term: 'hold', says: 'The finished roast waits in the warm until it is wanted.' },
  { term: 'missed', says: 'The moment passed and was not filmed.' },
  { term: 'moment', says: 'Something the heat does once and a camera must catch, such as the first slice.' },
  {
    term: 'rehearsal',
    says: 'The day played through with invented readings, so that everybody sees what the board will do.',
  },
  { term: 'slate log', says: 'The record of the day: readings, marks, takes and notes, added to and never rewritten.' },
  { term: 'slip', says: 'One person’s part of the call sheet.' },
  { term: 'tentative', says: 'The time of this shot moves with the cook until its call is given.' },
  { term: 'trigger', says: 'The probe reading at which people are called; it holds even when no screen works.' },
  { term: 'window', says: 'From when to when a moment is expected; nine cooks of ten have it inside.' },
  // Physics and safety
  {
    term: 'boiling point',
    says: 'Water boils at 100 °C by the sea and 1 °C lower for each 300 m of height; a thermometer is checked by it.',
  },
  { term: 'dwell', says: 'How long the food stays at a temperature or above; longer makes up for lower.' },
  { term: 'ensemble', says: 'All the cooks reckoned for one plan, each a little different within what is not known.' },
  {
    term: 'food-safety authority',
    says: 'The public body whose minimum temperatures the plan is held against; local rules come first.',
  },
  { term: 'lethality', says: 'How many germs the heat has killed so far, told as a log reduction.' },
  {
    term: 'log reduction',
    says: 'Each step leaves a tenth of the germs alive: one step kills 90 of 100, five leave one in 100 000.',
  },
  {
    term: 'member',
    says: 'One of the cooks reckoned for a plan: another fire, another roast, within what is not known.',
  },
  { term: 'seed', says: 'The number that all chance comes from: the same seed gives the same forecast again.' },
  {
    term: 'temperature control',
    says: 'Kept colder than 5 °C or hotter than 57 °C; in between the time counts, since germs grow.',
  },
  { term: 'yield', says: 'What is left of the raw weight after cooking; the rest is lost as water and fat.' },
] as const satisfies readonly Entry[]

export type TermName = (typeof GLOSSARY)[number]['term']

export const meaningOf = (term: TermName): string => GLOSSARY.find((entry) => entry.term === term)?.says ?? ''
