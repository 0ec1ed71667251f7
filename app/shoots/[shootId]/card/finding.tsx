'use client'
import { createContext, useContext } from 'react'
import type { CheckedClaim, Judge } from '@/lib/card/claim'
import type { CardSentence } from '@/lib/card/printable-steps'
import {
  authorsOpinion,
  borneOut,
  figuresBorneOut,
  judgedByDaysLog,
  judgedByModel,
  judgedByPlan,
  judgedByPublishedTable,
  printedAsAuthorsOwnStatement,
  version,
} from '../../../words/card'
import { VERDICTS } from './verdict-mark'

/** The publications that the findings name, by their ids: the register itself is too long for a page. */
export const Publications = createContext<Record<string, string>>({})

/** The sentence with the words that claim something marked. */
export function Marked({ sentence }: { sentence: CardSentence }) {
  const parts = []
  let at = 0
  for (const claim of [...sentence.claims].sort((a, b) => a.start - b.start)) {
    if (claim.start < at) continue
    parts.push(sentence.text.slice(at, claim.start))
    parts.push(
      <mark key={claim.start} className={claim.finding === 'contradicted' ? 'no' : undefined}>
        {claim.words}
      </mark>,
    )
    at = claim.start + claim.words.length
  }
  parts.push(sentence.text.slice(at))
  return <>{parts}</>
}

export function Finding({ claim, own }: { claim: CheckedClaim; own: boolean }) {
  return (
    <div className="mb-2">
      <p className="verdict">
        {claim.by === 'author' ? authorsOpinion : VERDICTS[claim.finding]}
        {own && claim.finding === 'contradicted' && printedAsAuthorsOwnStatement}
      </p>
      {claim.found && <p className="font-semibold">{claim.found}</p>}
      <p className="small">{claim.reason}</p>
      <JudgedBy claim={claim} />
    </div>
  )
}

const JUDGES: Record<Judge, string> = {
  plan: judgedByPlan,
  model: judgedByModel,
  log: judgedByDaysLog,
  table: judgedByPublishedTable,
  author: '',
  nobody: '',
}
function JudgedBy({ claim }: { claim: CheckedClaim }) {
  const publication = useContext(Publications)[claim.source]
  if (JUDGES[claim.by] === '') return null
  return (
    <p className="small">
      {JUDGES[claim.by]}
      {claim.by === 'model' && version(claim.source.replace(/^model /, ''))}
      {publication && `${claim.by === 'log' ? ', against' : ''}: ${publication}`}
    </p>
  )
}

export function BorneOut({ claims }: { claims: readonly CheckedClaim[] }) {
  return (
    <details>
      <summary className="small">
        {claims.length === 1 ? borneOut(claims[0]?.words ?? '') : figuresBorneOut(claims.length)}
      </summary>
      {claims.map((claim) => (
        <Finding key={claim.id + claim.start} claim={claim} own={false} />
      ))}
    </details>
  )
}
