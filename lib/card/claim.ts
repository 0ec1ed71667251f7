export const CLAIM_KINDS = [
  'cooker-temperature',
  'pull-temperature',
  'off-heat-temperature',
  'sliced-temperature',
  'carryover-rise',
  'warm-up-time',
  'roast-time',
  'sear-time',
  'rest-time',
  'total-time',
  'doneness',
  'edge-to-edge',
  'yield',
  'safety',
] as const
export type ClaimKind = (typeof CLAIM_KINDS)[number]

/** One checkable statement bound to a sentence. SI: °C, K, s, fraction. A point claim has low = high. */
export interface Claim {
  readonly id: string
  readonly kind: ClaimKind
  readonly cook: string
  /** The sentence it stands in, as printed, and its step. */
  readonly sentence: string
  readonly step: string
  /** The words in the sentence that make the claim. */
  readonly words: string
  readonly low: number
  readonly high: number
  readonly unit: 'degC' | 'K' | 's' | '1' | 'word'
}
export const FINDINGS = ['borne-out', 'borne-out-with-care', 'contradicted', 'cannot-be-checked'] as const
export type FindingKind = (typeof FINDINGS)[number]
/** A claim with what the check says of it. `figure` is the found value in `unit`, null where nothing can be found. */
export interface CheckedClaim extends Claim {
  readonly finding: FindingKind
  readonly figure: { readonly low: number; readonly likely: number; readonly high: number } | null
  readonly reason: string
  readonly source: string
  /** For a contradicted claim: the sentence that would be true. */
  readonly trueSentence: string | null
}
export interface Caution {
  readonly code: string
  readonly sentence: string
}
