'use client'
import { type DragEvent, useState } from 'react'
import { chooseCsv, linesOfFile, orDropItHere, orPasteItsLines, readThem, thereIsNothing } from '../../words/readings'
import { fileText } from './file-text'

/** A file chosen, dropped or pasted. */
export function ChooseFile({ onText }: { onText: (name: string, text: string) => void }) {
  const [fault, setFault] = useState('')
  const [over, setOver] = useState(false)
  const [pasted, setPasted] = useState('')
  const take = async (file: File | undefined) => {
    if (!file) return
    const text = await fileText(file)
    if (typeof text !== 'string') return setFault(text.sentence)
    offer(file.name, text)
  }
  const offer = (name: string, text: string) => {
    if (text.trim() === '') return setFault(thereIsNothing)
    setFault('')
    onText(name, text)
  }
  const drop = (event: DragEvent) => {
    event.preventDefault()
    setOver(false)
    void take(event.dataTransfer.files[0])
  }
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is one more way; the button in it does the same.
    <div
      className={`drop ${over ? 'over' : ''}`}
      onDragOver={(event) => {
        event.preventDefault()
        setOver(true)
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <p>
        <label className="btn main">
          {chooseCsv}
          <input
            type="file"
            accept=".csv,.tsv,.txt,text/csv,text/plain"
            className="sr-only"
            onChange={(event) => {
              void take(event.target.files?.[0])
              event.target.value = ''
            }}
          />
        </label>{' '}
        {orDropItHere}
      </p>
      <p className="told" role="alert">
        {fault}
      </p>
      <details>
        <summary>{orPasteItsLines}</summary>
        <div className="field">
          <label htmlFor="pasted">{linesOfFile}</label>
          <textarea id="pasted" rows={4} value={pasted} onChange={(event) => setPasted(event.target.value)} />
        </div>
        <button type="button" className="btn" onClick={() => offer('pasted lines', pasted)}>
          {readThem}
        </button>
      </details>
    </div>
  )
}
