import type { Metadata } from 'next'
import { GLOSSARY } from '../words/glossary'
import { GUIDES, glossaryLead, glossaryWord, guidesWord, needsNone } from '../words/help'
import { help } from '../words/help-link'
import { GuideList } from './guide-list'
import { HelpHead } from './help-head'
import './help.css'

export const metadata: Metadata = { title: help }

const byName = [...GLOSSARY].sort((a, b) => a.term.localeCompare(b.term, 'en'))

/** The five guides, and what the words mean. */
export default function HelpPage() {
  return (
    <main id="main" className="page">
      <HelpHead under={false} />
      <h1>{guidesWord}</h1>
      <p className="lead">{needsNone}</p>
      <GuideList guides={GUIDES} />
      <section aria-labelledby="words" className="mt-10">
        <h2 id="words">{glossaryWord}</h2>
        <p className="small">{glossaryLead}</p>
        <dl className="glossary">
          {byName.map(({ term, says }) => (
            <div key={term}>
              <dt>{term}</dt>
              <dd>{says}</dd>
            </div>
          ))}
        </dl>
      </section>
    </main>
  )
}
