'use client'
import { setAt, valueAt } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import type { Problem } from '@/lib/refusals'
import { Field } from '../../../ui/field'
import {
  addressOfPicture,
  addressOfVideo,
  addressOfYourOwnPage,
  author,
  cuisine,
  dayItWasPutUp,
  dishWhy,
  keywords,
  keywordsWhy,
  kindOfDish,
  lengthOfVideo,
  openWhy,
  ownPageWhy,
  titleOfVideo,
  videoLengthWhy,
  whereItIsPublished,
  whoMayReadPageHere,
} from '../../../words/card'
import { type DocumentField, fieldAt, optional } from '../../document-fields'

/** Who may read the page: written as yes or no, read as a choice. */
const open = optional('open', whoMayReadPageHere, '/publish/open', {
  why: openWhy,
  options: [
    ['', 'only those with a link'],
    ['true', 'anybody'],
  ],
  read: (document) => (valueAt(document, '/publish/open') === true ? 'true' : ''),
  write: (document, text) => setAt(document, '/publish/open', text === 'true'),
})
const FIELDS: readonly DocumentField[] = [
  optional('author', author, '/publish/author'),
  open,
  optional('page', addressOfYourOwnPage, '/publish/page', { why: ownPageWhy }),
  optional('image', addressOfPicture, '/publish/image'),
  optional('video', addressOfVideo, '/publish/video/url'),
  optional('video-title', titleOfVideo, '/publish/video/title'),
  optional('uploaded', dayItWasPutUp, '/publish/video/uploaded', { type: 'date' }),
  optional('length', lengthOfVideo, '/publish/video/length', { why: videoLengthWhy }),
  optional('category', kindOfDish, '/publish/category', { why: dishWhy }),
  optional('cuisine', cuisine, '/publish/cuisine'),
  optional('keywords', keywords, '/publish/keywords', { why: keywordsWhy }),
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
      <h2 id="published">{whereItIsPublished}</h2>
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
