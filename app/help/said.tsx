const MARKED = /(\[[^\]]+\]|`[^`]+`)/

/** A sentence of a guide: what is pressed stands bold, what is typed as code. */
export function Said({ text }: { text: string }) {
  return text.split(MARKED).map((part, i) => {
    const inner = part.slice(1, -1)
    // biome-ignore lint/suspicious/noArrayIndexKey: the parts of one sentence never change places
    if (part.startsWith('[')) return <b key={i}>{inner}</b>
    // biome-ignore lint/suspicious/noArrayIndexKey: the same
    return part.startsWith('`') ? <code key={i}>{inner}</code> : part
  })
}
