import { Fragment, type ReactNode } from 'react'
import type { TermName } from '../words/glossary'
import { Term } from './term'

/** A text in which words of the glossary can be pressed, each where it first stands: `{ claim: 'claims' }`. */
export function WithTerms({ text, of }: { text: string; of: Partial<Record<TermName, string>> }) {
  const parts = (Object.entries(of) as [TermName, string][]).reduce<ReactNode[]>(
    (cut, [term, word]) => {
      const i = cut.findIndex((part) => typeof part === 'string' && wordAt(part, word) >= 0)
      const part = cut[i]
      if (typeof part !== 'string') return cut
      const at = wordAt(part, word)
      const pressed = (
        <Term key={term} of={term}>
          {part.slice(at, at + word.length)}
        </Term>
      )
      return [...cut.slice(0, i), part.slice(0, at), pressed, part.slice(at + word.length), ...cut.slice(i + 1)]
    },
    [text],
  )
  return (
    // What is pressed open stays within: nothing that follows may stand beside it.
    <span className="flow-root">
      {parts.map((part, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the pieces of one sentence do not change places
        <Fragment key={i}>{part}</Fragment>
      ))}
    </span>
  )
}

/** Where the word stands by itself, its first letter large or small. */
function wordAt(text: string, word: string): number {
  const [first = '', rest] = [word.charAt(0), word.slice(1)]
  return text.search(new RegExp(`\\b[${first.toLowerCase()}${first.toUpperCase()}]${rest}\\b`))
}
