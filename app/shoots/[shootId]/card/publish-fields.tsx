'use client'
import { setAt, valueAt } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import type { Problem } from '@/lib/refusals'
import { Field } from '../../../ui/field'
import { type DocumentField, fieldAt, optional } from '../../document-fields'

/** Who may read the page: written as yes or no, read as a choice. */
const open = optional('open', 'Who may read the page here', '/publish/open', {
  why: 'Anybody who has its address may read the card, and nothing else.',
  options: [
    ['', 'only those with a link'],
    ['true', 'anybody'],
  ],
  read: (document) => (valueAt(document, '/publish/open') === true ? 'true' : ''),
  write: (document, text) => setAt(document, '/publish/open', text === 'true'),
})
const FIELDS: readonly DocumentField[] = [
  optional('author', 'Author', '/publish/author'),
  open,
  optional('page', 'Address of your own page', '/publish/page', { why: 'The code on paper leads there.' }),
  optional('image', 'Address of the picture', '/publish/image'),
  optional('video', 'Address of the video', '/publish/video/url'),
  optional('video-title', 'Title of the video', '/publish/video/title'),
  optional('uploaded', 'Day it was put up', '/publish/video/uploaded', { type: 'date' }),
  optional('length', 'Length of the video', '/publish/video/length', { why: 'Such as 12 min 30 s.' }),
  optional('category', 'Kind of dish', '/publish/category', { why: 'Such as main course.' }),
  optional('cuisine', 'Cuisine', '/publish/cuisine'),
  optional('keywords', 'Keywords', '/publish/keywords', { why: 'Commas between them.' }),
]

interface PublishFieldsProps {
  document: ShootDocument
  change: (document: ShootDocument) => void
  problems: readonly Problem[]
}
/** Where card and video are to be found; page, code and files take it from here. */
export function PublishFields({ document, change, problems }: PublishFieldsProps) {
  const faults = problems.filter(({ pointer }) => pointer.startsWith('/publish'))
  return (
    <section aria-labelledby="published" className="mt-10">
      <h2 id="published">Where it is published</h2>
      <div className="fields">
        {FIELDS.map((field) => (
          <Field
            key={field.key}
            label={field.label}
            value={field.read(document)}
            why={field.why}
            options={field.options}
            type={field.type}
            fault={faults.find(({ pointer }) => fieldAt(FIELDS, pointer) === field)?.sentence}
            onChange={(text) => change(field.write(document, text))}
          />
        ))}
      </div>
    </section>
  )
}
