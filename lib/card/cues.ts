import type { Measure } from './quantities'
import type { Token } from './tokens'

/**
 * What a number in a sentence is about. The words around it decide: the nearest cue of its measure, in the same
 * clause before another clause, before the number rather than after it.
 */
export type Topic =
  | 'warm'
  | 'lead'
  | 'cooker'
  | 'roast'
  | 'sear'
  | 'rest'
  | 'slice'
  | 'off'
  | 'pull'
  | 'total'
  | 'turn'
  | 'probe'
  | 'start'
  | 'authority'
  | 'storage'
  | 'aside'
  | 'loss'
  | 'kept'
  | 'face'
  | 'band'
  | 'thick'
  | 'served'
  | 'cooked'
  | 'meat'

interface Cue {
  readonly topic: Topic
  readonly words: RegExp
  readonly of: readonly Measure[]
}
const HEAT: readonly Measure[] = ['temperature']
const TIME: readonly Measure[] = ['duration']
const BOTH: readonly Measure[] = ['temperature', 'duration']
const cue = (topic: Topic, of: readonly Measure[], words: string): Cue => ({
  topic,
  of,
  words: new RegExp(`(?<= )(?:${words})(?= )`, 'g'),
})

/** Read on the sentence in lower case, tokens parted by single spaces. */
const CUES: readonly Cue[] = [
  cue(
    'total',
    TIME,
    'in all|altogether|in total|all told|total|start to finish|start to table|from lighting|after lighting|from fire to (?:plate|table|slice)|from cold|whole thing|from the match|to the (?:plate|table) ',
  ),
  cue('total', TIME, 'from lighting the (?:fire|coals|charcoal)|from the first match|dinner is'),
  cue(
    'warm',
    BOTH,
    'warm|warms|warming|warm - up|preheat|pre - heat|preheated|heats up|heat up the|settle|settles|steady|light the (?:fire|coals|charcoal)|lit|come up to heat|get the (?:oven|cooker|kettle|fire|grill)',
  ),
  cue(
    'roast',
    BOTH,
    'roast|roasts|roasted|roasting|cook|cooks|cooked|cooking|bake|bakes|indirect|slow fire|lid shut|went on|goes on|go on|put on|in the oven|to the pull|until the pull',
  ),
  cue('lead', TIME, 'before (?:the )?(?:meat|lamb|roast|bird|turkey|chicken|pork|beef|leg|it) (?:goes|went|is put) on'),
  cue('cooker', HEAT, 'oven|cooker|kettle|grill|fire|dial'),
  cue(
    'sear',
    BOTH,
    'sear|sears|seared|searing|crisp|crisps|char|chars|brown it|direct heat|over the flames|over the coals|hot side|vents open',
  ),
  cue('rest', BOTH, 'rest|rests|rested|resting|stand|stands|board|foil|tent|sit|sits|relax'),
  cue(
    'slice',
    HEAT,
    'coldest|slice|slices|sliced|slicing|carve|carved|serve|served|at the table|climb|climbs|rise|rises|ends|ends up|finish|finishes|in the end|peak|peaks|by itself|carryover|rare|medium|well - done|rosy|pink',
  ),
  cue('off', HEAT, 'off the (?:heat|fire|grill)|take it off|lift it|comes off|remove it|off at'),
  cue(
    'pull',
    HEAT,
    'pull|pulled|pulling|turn the heat up|turn up the heat|open the vents|vents wide|before the sear|before searing|start the sear|move it over',
  ),
  cue('turn', TIME, 'turn|turned|flip|flipped|turn it'),
  cue('probe', TIME, 'probe|thermometer'),
  cue('start', HEAT, 'fridge|refrigerator|fridge - cold|from cold|straight from|starting at|starts at|start at'),
  cue('authority', HEAT, 'authority|minimum|rule|law|official'),
  cue(
    'storage',
    TIME,
    'chill|chilled|refrigerate|refrigerated|leftovers|left over|what is left|left out|room temperature|out of the fridge|in the fridge|into the fridge|fridge|freezer|freeze|freezes|frozen|cool|cools|cooled|keep it|keeps|danger|thaw|thaws|thawed|thawing|defrost|defrosts|defrosted',
  ),
  cue(
    'aside',
    TIME,
    'salt|salted|season|seasoned|marinate|marinated|brine|brined|soak|boil|simmer|chop|ahead|the day before|you stand|stand at it|baste',
  ),
  cue('loss', ['share', 'mass'], 'lose|loses|lost|losing|loss|shrink|shrinks|shrinkage|lighter|juice|cooks away|drips'),
  cue('kept', ['share'], 'keep|keeps|kept|left of|remains'),
  cue('face', ['share'], 'pink|face|rosy|slice|below|cut'),
  cue('band', ['length'], 'outer|grey|gray|brown|band|ring|rim|edge|crust|pink'),
  cue('thick', ['length'], 'thick|thickest|thickness|across'),
  cue('served', ['count'], 'serves|serve|feeds|feed|enough for|people|guests|portions|servings|persons|eaters'),
  cue('cooked', ['mass'], 'cooked|carved|off the bone|on the plate|yields|yield|gives|to carve|sliced meat'),
  cue(
    'meat',
    ['mass'],
    'leg|loin|roast|joint|rib|shoulder|turkey|chicken|lamb|pork|beef|bird|brisket|cut|meat|rump|raw|weighs|piece',
  ),
]

export interface Hit {
  readonly topic: Topic
  readonly of: readonly Measure[]
  readonly from: number
  readonly to: number
}

/** All cues of a sentence with the tokens they take up. */
export function cuesIn(tokens: readonly Token[]): Hit[] {
  const starts = new Map<number, number>()
  let text = ' '
  tokens.forEach((token, i) => {
    starts.set(text.length, i)
    text += `${token.text} `
  })
  return CUES.flatMap(({ topic, of, words }) =>
    [...text.matchAll(words)].map((m) => {
      const from = starts.get(m.index) ?? 0
      return { topic, of, from, to: from + m[0].trim().split(' ').length }
    }),
  )
}

/** What a comma, a colon, a new clause between cue and number costs, in words of distance. */
const FENCE = new Map([
  [',', 3],
  [';', 12],
  [':', 2],
  ['then', 6],
  ['and', 2],
  ['(', 1],
  ['but', 6],
])
const AFTER_COST = 3
/** These are said after their number ("an hour in all", "50 minutes before the meat goes on"). */
const NAMED_AFTER: readonly Topic[] = ['lead', 'total']

function cost(tokens: readonly Token[], hit: Hit, from: number, to: number): number {
  const before = hit.to <= from
  const between = before ? tokens.slice(hit.to, from) : tokens.slice(to, hit.from)
  const fences = between.reduce((sum, t) => sum + (FENCE.get(t.text) ?? 0), 0)
  return between.length + fences + (before || NAMED_AFTER.includes(hit.topic) ? 0 : AFTER_COST)
}

/** The topic nearest to the tokens from..to that speaks of this measure, or null. */
export function topicOf(
  tokens: readonly Token[],
  hits: readonly Hit[],
  measure: Measure,
  from: number,
  to: number,
): Topic | null {
  let best: { topic: Topic; cost: number } | null = null
  for (const hit of hits) {
    if (!hit.of.includes(measure) || (hit.from < to && hit.to > from)) continue
    // A longer cue says more: "from lighting the fire" against "lighting".
    const here = cost(tokens, hit, from, to) - (hit.to - hit.from) * 0.5
    if (!best || here < best.cost) best = { topic: hit.topic, cost: here }
  }
  return best?.topic ?? null
}
