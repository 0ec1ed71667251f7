import type { Preview } from './preview'

/** The answer in one line that stays in sight while somebody types on a phone; the page's headline says the same. */
export const AnswerLine = ({ preview }: { preview: Preview | null }) =>
  preview && (
    <p
      className="sticky top-0 z-10 -mx-3.5 border-b-2 border-ink bg-paper px-3.5 py-2 font-cond leading-tight font-bold min-[1001px]:hidden print:hidden"
      aria-hidden="true"
    >
      {preview.first} {preview.second}
    </p>
  )
