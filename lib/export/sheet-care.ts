/** Cautions that the risk sheet holds in full; the call sheet has one line in their place. */
const ON_THE_RISK_SHEET = ['choked-lid', 'fat-flare', 'ash', 'probe-cross-contact', 'cooling']

type Cautioned = { readonly code: string; readonly sentence: string }

/** What everybody must have read before they come; the rest hangs by the cooker. */
export function sheetCare(cautions: readonly Cautioned[]): string[] {
  const kept = cautions.filter(({ code }) => !ON_THE_RISK_SHEET.includes(code))
  const left = kept.length < cautions.length
  return [
    ...kept.map(({ sentence }) => sentence),
    ...(left ? ['The risk sheet hangs by the cooker: read it at call.'] : []),
  ]
}
