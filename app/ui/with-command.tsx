import { npmStartCrew } from '../words/door'

/** A sentence in which the command stands on one line, so that nobody types it with a gap. */
export function WithCommand({ text }: { text: string }) {
  const [before, after] = text.split(npmStartCrew)
  if (after === undefined) return text
  return (
    <>
      {before}
      <code className="whitespace-nowrap">{npmStartCrew}</code>
      {after}
    </>
  )
}
