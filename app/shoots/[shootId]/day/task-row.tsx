'use client'
import { Fragment, type ReactNode } from 'react'
import { removeAt, valueAt } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import type { Problem } from '@/lib/refusals'
import { less, lessWords, more, moreWords, ofWords, takeThisTaskOut } from '../../../words/day'
import { takenOut } from '../../../words/shared'
import { asText, type DocumentField, fieldAt } from '../../document-fields'
import type { Act } from '../../use-actions'
import { Cell } from './cell'
import { isTaskColumn, TASK_COLUMNS, taskCells, taskFields } from './task-fields'

interface TaskRowProps {
  readonly document: ShootDocument
  readonly index: number
  /** "18:05 to 18:10, cam-1", shift by shift. */
  readonly falls: string
  readonly problems: readonly Problem[]
  readonly open: boolean
  readonly onOpen: (open: boolean) => void
  readonly control: (field: DocumentField) => ReactNode
  readonly change: (next: ShootDocument) => void
  readonly act: Act
}

/** One task, written in its cells; all it says, and its way out, under "More". */
export function TaskRow(props: TaskRowProps) {
  const { document, index, falls, problems, open, onOpen, control, change, act } = props
  const at = `/tasks/${index}`
  const title = asText(valueAt(document, `${at}/title`)) || 'Untitled task'
  const { title: titleField, ...cells } = taskCells(document, index)
  const all = [titleField, ...Object.values(cells)]
  const cell = (field: DocumentField, list?: string) => (
    <Cell
      field={field}
      document={document}
      fault={problems.find(({ pointer }) => fieldAt(all, pointer) === field)?.sentence}
      list={list}
      onChange={change}
    />
  )
  const wrong = (field: DocumentField) => problems.some(({ pointer }) => fieldAt(all, pointer) === field)
  return (
    <Fragment>
      <tr className={`shot${open ? ' open' : ''}`}>
        <td className="name">
          {cell(titleField)}
          {falls && <p className="small falls">{falls}</p>}
        </td>
        {TASK_COLUMNS.map((column) => (
          <td key={column} className={`in ${column}${wrong(cells[column]) ? ' wrong' : ''}`}>
            {cell(cells[column], column === 'from' || column === 'to' ? `edges-${index}` : undefined)}
          </td>
        ))}
        <td className="do">
          <datalist id={`edges-${index}`}>
            {cells.from.suggestions?.map((words) => (
              <option key={words} value={words} />
            ))}
          </datalist>
          <button
            type="button"
            className="textlink more"
            aria-expanded={open}
            aria-label={ofWords(open ? lessWords : moreWords, title)}
            onClick={() => onOpen(!open)}
          >
            {open ? less : more}
          </button>
        </td>
      </tr>
      {open && (
        <tr className="shot-more">
          <td colSpan={TASK_COLUMNS.length + 2}>
            <div className="grid grid-cols-1 gap-x-6 sm:grid-cols-2 lg:grid-cols-4">
              {taskFields(document, index).map((field) => (
                <div key={field.key} className={isTaskColumn(field) ? 'when-narrow' : undefined}>
                  {control(field)}
                </div>
              ))}
            </div>
            <p className="pb-3">
              <button
                type="button"
                className="btn"
                onClick={() => {
                  onOpen(false)
                  act(takenOut(title), removeAt(document, at), at)
                }}
              >
                {takeThisTaskOut}
              </button>
            </p>
          </td>
        </tr>
      )}
    </Fragment>
  )
}
