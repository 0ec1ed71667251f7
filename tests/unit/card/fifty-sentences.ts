import type { Line } from '../../../lib/log/log'
import { mark, reading } from '../log/lines'

/**
 * Sentences as a cook would write them of the demo's leg of lamb (3.2 kg, kettle at 150 °C, sear at 320 °C from 46 to
 * 52 °C at the probe, 15 to 40 min of rest), what is to be found ("kind: finding", in reading order), and why.
 * "Model" names the law or window that decides; the published values are named with their sources in lib/model/sources.ts.
 */
export type Row = readonly [sentence: string, findings: string, why: string]

export const SENTENCES: readonly Row[] = [
  // What the plan sets
  ['Light the coals and let the kettle settle at 150 °C / 300 °F.', 'cooker-temperature: borne-out', 'plan: 150 °C'],
  ['Let the kettle settle at gas mark 2.', 'cooker-temperature: borne-out', 'gas-mark: 300 °F'],
  ['Roast it in a kettle at gas mark 4.', 'cooker-temperature: contradicted', 'gas-mark: 350 °F; plan: 150 °C'],
  ['Sear it over a fire of 600 °F.', 'sear-temperature: borne-out', 'plan: 320 °C is 608 °F'],
  ['Take it off the heat at 126 °F.', 'off-heat-temperature: borne-out', 'plan: 52 °C'],
  ['Take it off the heat at 140 F.', 'off-heat-temperature: contradicted', 'plan: 52 °C is 126 °F'],
  ['Turn it after an hour.', 'turn-time: borne-out', 'plan: half the likely time to pull'],
  ['Buy a leg of 3,2 kg.', 'mass: borne-out', 'plan; decimal comma'],
  ['Buy a leg of 3,200 g.', 'mass: borne-out', 'plan; comma of thousands'],
  ['Buy a leg of 5½ lb.', 'mass: contradicted', 'plan: 3.2 kg is 7.05 lb'],
  // What the model finds
  ['Roast it for about two hours.', 'roast-time: borne-out', 'model: 1 h 35 to 2 h 25'],
  ['Roast it 1½–2½ h.', 'roast-time: borne-out', 'model; fractions and an en dash'],
  ['Roast it for 1,5 to 2,5 hours.', 'roast-time: borne-out', 'model; decimal commas'],
  ['Dinner in two and a half hours, from lighting the fire.', 'total-time: contradicted', 'model: 3 h 20 to 4 h 10'],
  ['Allow 20 minutes a pound.', 'roast-time: borne-out-with-care', 'model: 7.05 lb make 2 h 21, off the likely'],
  ['Allow 40 minutes to the pound.', 'roast-time: contradicted', 'model: 7.05 lb make 4 h 42'],
  ['Roast it 25 minutes per pound plus 25 minutes.', 'roast-time: contradicted', 'model: 3 h 21'],
  ['Rest it at least a quarter of an hour.', 'rest-time: borne-out', 'plan: 15 to 40 min'],
  ['Let it rest half an hour.', 'rest-time: borne-out-with-care', 'plan: 15 to 40 min, likely 15'],
  ['Rest it for 1½ hours.', 'rest-time: contradicted', 'plan: 40 min at most'],
  [
    'The middle climbs 5 to 8 °C while it rests.',
    'carryover-rise: borne-out',
    'model: heat goes on inward after the fire',
  ],
  ['The middle climbs another 40 °F while it rests.', 'carryover-rise: contradicted', 'model: 5 to 8 K'],
  ['A third of its weight is lost.', 'yield: contradicted', 'model: 12 to 20 %'],
  ['It loses about a sixth of its weight.', 'yield: borne-out', 'model: 12 to 20 %'],
  ['It keeps at least half of its weight.', 'yield: borne-out', 'model: it loses 20 % at most'],
  ['Serves 8.', 'yield: borne-out-with-care', 'common practice, no source: 125 to 250 g cooked a head'],
  ['Serves thirty.', 'yield: contradicted', 'common practice, no source'],
  ['Pink from edge to edge.', 'edge-to-edge: contradicted', 'model: most of the face passes 65 °C'],
  ['Pink for all but the outer 3 cm.', 'edge-to-edge: borne-out', 'model: 23 to 41 mm'],
  ['A grey rim of no more than 5 mm.', 'edge-to-edge: contradicted', 'model: 23 to 41 mm'],
  // What published tables say
  ['Slice it medium.', 'doneness: borne-out', 'culinary-school-doneness; model: 56 to 63 °C when sliced'],
  ['Slice it medium-rare.', 'doneness: borne-out-with-care', 'amsa-photo-guide calls 62.8 °C so, cooks do not'],
  ['It is well done.', 'doneness: contradicted', 'no scale below 65 °C'],
  ['The minimum is 63 °C / 145 °F, then 3 minutes.', 'safety: borne-out, safety: borne-out', 'fsis-safe-minimum'],
  ['It is safe for everybody.', 'safety: contradicted', 'fsis-safe-minimum: below 63 °C at its coldest'],
  ['It keeps for four days in the fridge.', 'keeping: borne-out', 'fsis-leftovers: 3 to 4 days'],
  ['It keeps for a week in the fridge.', 'keeping: contradicted', 'fsis-leftovers: 3 to 4 days'],
  ['Leftovers freeze well for three months.', 'keeping: borne-out', 'fsis-leftovers: 3 to 4 months'],
  ['What is left goes into the fridge within two hours.', 'keeping: borne-out', 'fsis-safe-minimum: 2 h'],
  ['It can be left out for four hours.', 'keeping: contradicted', 'fsis-safe-minimum: 2 h'],
  ['Leftovers cool to 21 °C within 2 hours.', 'keeping: borne-out', 'fda-food-code-2017: 135 to 70 °F in 2 h'],
  ['Reheat it to 74 °C / 165 °F.', 'keeping: borne-out', 'fsis-leftovers: 165 °F'],
  ['Reheat leftovers to 50 °C.', 'keeping: contradicted', 'fsis-leftovers: 165 °F'],
  ['Keep leftovers in a fridge at 4 °C.', 'keeping: borne-out', 'fda-food-code-2017: 41 °F'],
  ['From frozen it takes about twice as long.', 'keeping: contradicted', 'fsis-big-thaw: 50 % longer'],
  ['From frozen it takes half as long again.', 'keeping: borne-out', 'fsis-big-thaw: 50 % longer'],
  ['A frozen leg thaws in the fridge in two days.', 'keeping: borne-out', 'fsis-big-thaw: a day for 4 to 5 lb'],
  ['Thaw it in cold water for an hour.', 'keeping: contradicted', 'fsis-big-thaw: 30 min a pound, 3 h 30'],
  // What nobody can check
  ['Cook it until it is hotter than 60.', 'unbound: cannot-be-checked', 'no scale named'],
  ['Roast it at 300 degrees.', 'unbound: cannot-be-checked', 'no scale named'],
  ['Turn it every 20 minutes.', 'unbound: cannot-be-checked', 'the model reckons one turn'],
  ['Salt it two days ahead, in the fridge.', 'unbound: cannot-be-checked', 'work that the model does not reckon'],
  ['Cut it into slices ½ in thick.', 'unbound: cannot-be-checked', 'the carver’s own to choose'],
  ['Let it cook overnight.', 'unbound: cannot-be-checked', 'no length of time'],
  ['On the table at 18:30.', 'unbound: cannot-be-checked', 'a card knows no time of day'],
  ['Add 2 cloves of garlic.', 'unbound: cannot-be-checked', 'nothing of it in the model'],
  ['The juiciest leg you will ever eat.', 'unbound: cannot-be-checked', 'the author’s opinion'],
]

/** The same leg on a day that was filmed: a slow fire, then much as planned. */
export const FILMED: readonly Line[] = [
  mark(-100, 'fire-lit'),
  mark(-15, 'cooker-steady'),
  mark(0, 'meat-on'),
  ...[10, 40, 70, 100, 125].map((min) => reading(min, 150, {}, 'cooker')),
  mark(60, 'turn'),
  reading(128, 45.4),
  reading(129.5, 46.2),
  mark(130, 'pull'),
  mark(144, 'off-heat'),
  reading(164, 58.6),
  reading(168, 59.4),
  mark(166, 'first-slice'),
]
export const FILMED_SENTENCES: readonly Row[] = [
  ['Roast it for 2 h 10.', 'roast-time: borne-out', 'log: 2 h 10'],
  ['Roast it for 1 h 40.', 'roast-time: contradicted', 'log: 2 h 10; the model alone would bear it'],
  ['Warming up takes 85 minutes.', 'warm-up-time: borne-out-with-care', 'log: 85 min; model: 30 min to 1 h'],
  ['It takes 4 h 25 in all.', 'total-time: borne-out-with-care', 'log: 4 h 26; model: to 4 h 10'],
  ['It takes 3½ hours in all.', 'total-time: contradicted', 'log: 4 h 26; the model alone would bear it'],
  ['It takes 4 h 50 in all.', 'total-time: contradicted', 'log: 4 h 26, only nearly; model: to 4 h 10'],
  ['Sear it for 25 minutes.', 'sear-time: contradicted', 'log: 14 min'],
  ['Rest it for 22 minutes.', 'rest-time: borne-out', 'log: 22 min, inside what the plan leaves'],
  ['Sliced, the middle stands at 59 °C.', 'sliced-temperature: borne-out', 'log: 59 °C'],
  ['Slice it medium.', 'doneness: borne-out', 'log: 59 °C; culinary-school-doneness'],
  ['Roast it in a kettle at 175 °C.', 'cooker-temperature: contradicted', 'log: 150 °C'],
]
