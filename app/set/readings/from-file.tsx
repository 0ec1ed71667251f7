'use client'
import dynamic from 'next/dynamic'
import { useState } from 'react'
import { readingFile } from '../../words/readings'
import { useSet } from '../set-context'
import { ChooseFile } from './choose-file'
import type { ChosenFile } from './match-file'

/** What reads a file weighs more than the page; it comes with the first file. */
const MatchFile = dynamic(() => import('./match-file'), {
  ssr: false,
  loading: () => <p role="status">{readingFile}</p>,
})

/** A logger's file, chosen and then matched. */
export function FromFile({ shootId, date }: { shootId: string; date: string }) {
  const { session } = useSet()
  const [chosen, setChosen] = useState<ChosenFile | null>(null)
  if (!chosen) return <ChooseFile onText={(name, text) => setChosen({ name, text, at: session.now })} />
  return <MatchFile shootId={shootId} date={date} chosen={chosen} close={() => setChosen(null)} />
}
