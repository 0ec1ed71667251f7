export const CLAIM_KINDS = [
  'cooker-temperature',
  'sear-temperature',
  'pull-temperature',
  'off-heat-temperature',
  'sliced-temperature',
  'carryover-rise',
  'warm-up-time',
  'roast-time',
  'sear-time',
  'rest-time',
  'total-time',
  'turn-time',
  'probe-time',
  'doneness',
  'edge-to-edge',
  'yield',
  'safety',
  'start-temperature',
  'mass',
  'thickness',
  /** Thawing, chilling, keeping, warming up again: what published tables say. */
  'keeping',
  /** A number or a word of praise that the plan and the model know nothing of. */
  'unbound',
] as const
export type ClaimKind = (typeof CLAIM_KINDS)[number]

/** One checkable statement bound to a sentence. SI: °C, K, s, kg, m, fraction. A point claim has low = high. */
export interface Claim {
  readonly id: string
  readonly kind: ClaimKind
  readonly cook: string
  /** The sentence it stands in, as printed, and its step. */
  readonly sentence: string
  readonly step: string
  /** The words in the sentence that make the claim, and where they begin. */
  readonly words: string
  readonly start: number
  /** `at-least` has high = Infinity, `at-most` low = -Infinity; `about` widens what counts as near. */
  readonly hedge: 'none' | 'about' | 'at-least' | 'at-most'
  readonly low: number
  readonly high: number
  readonly unit: 'degC' | 'K' | 's' | '1' | 'kg' | 'm' | 'people' | 'word'
  /** What a claim of kind doneness, safety, edge-to-edge or unbound says, in one word ("medium-rare", "storage"). */
  readonly says: string
}
export const FINDINGS = ['borne-out', 'borne-out-with-care', 'contradicted', 'cannot-be-checked'] as const
export type FindingKind = (typeof FINDINGS)[number]
/** Who judged a claim: what the plan sets, the model's cooks, the filmed cook, a published table; or nobody: taste is the author's. */
export type Judge = 'plan' | 'model' | 'log' | 'table' | 'author' | 'nobody'
export interface Figure {
  readonly low: number
  readonly likely: number
  readonly high: number
}
/** A claim with what the check says of it. `figure` is the found value in `unit`, null where nothing can be found. */
export interface CheckedClaim extends Claim {
  readonly finding: FindingKind
  readonly figure: Figure | null
  /** The figure in words, both unit systems ("2 h 05 to 3 h 10", "60 % of the face stayed below 65 °C"). */
  readonly found: string
  readonly reason: string
  readonly by: Judge
  readonly source: string
  /** For a contradicted claim: the words that would be true in its place; null where the whole sentence must give way. */
  readonly mend: string | null
  /** For a contradicted claim: the sentence that would be true. */
  readonly trueSentence: string | null
}
export interface Caution {
  readonly code: string
  readonly sentence: string
}
