/**
 * An expected "no": where in the shoot file it is, and one clear sentence that says what is wrong and what would be right.
 * `pointer` is an RFC 6901 JSON pointer into the document ("" is the whole document).
 */
export type Problem = { readonly pointer: string; readonly sentence: string }
/** The plan can be run, but somebody should know. `code` is stable, `path` a JSON pointer. */
export type Warning = { readonly code: string; readonly path: string; readonly sentence: string }
export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] }
