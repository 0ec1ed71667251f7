'use client'
import { Fragment } from 'react'
import type { ClipDocument } from '@/lib/export/clips-of-takes'
import { removeAt, setAt, valueAt } from '@/lib/plan/edit'
import type { ShootDocument } from '@/lib/plan/shoot'
import { FRAME_RATES } from '@/lib/plan/timecode'
import { Field } from '../../../ui/field'
import { UndoAt } from '../../../ui/undo-line'
import {
  addClip,
  beginsInVideo,
  cameraWords,
  clipLengthWhy,
  clipNumbered,
  clipsFromTakes,
  clipsMadeUp,
  clipsWhy,
  clipWords,
  emptyWhile,
  firstFrame,
  frames,
  itsTimecode,
  lengthWords,
  onePictureOfSvg,
  overlayOfPng,
  takeOut,
} from '../../../words/edit'
import { takenOut } from '../../../words/shared'
import { drawnAsFetched } from '../../../words/working'
import { type DocumentField, fieldAt, optional, plain } from '../../document-fields'
import { SaveLine } from '../../save-line'
import { useActions } from '../../use-actions'
import { useSaved } from '../../use-saved'
import type { ClipTold } from './clips-told'

interface EditDeskProps {
  shootId: string
  version: number
  document: ShootDocument
  cameras: readonly string[]
  /** Clips that the takes tell of. */
  offered: readonly ClipDocument[]
  told: readonly ClipTold[]
  invented: boolean
}

const RATES = FRAME_RATES.map((rate) => [rate, `${rate} a second`] as const)
function clipFields(i: number, cameras: readonly string[]): readonly DocumentField[] {
  const at = `/clips/${i}`
  const known = cameras.length > 0 ? { options: cameras.map((id) => [id, id] as const) } : {}
  return [
    plain(`clip-id-${i}`, clipWords, `${at}/id`),
    plain(`clip-camera-${i}`, cameraWords, `${at}/camera`, known),
    plain(`clip-start-${i}`, firstFrame, `${at}/start`, { why: itsTimecode }),
    plain(`clip-rate-${i}`, frames, `${at}/rate`, { options: RATES }),
    optional(`clip-length-${i}`, lengthWords, `${at}/length`, { why: clipLengthWhy }),
    optional(`clip-in-${i}`, beginsInVideo, `${at}/in`, { why: emptyWhile }),
  ]
}
const clipsOf = (document: ShootDocument): readonly unknown[] => {
  const clips = valueAt(document, '/clips')
  return Array.isArray(clips) ? clips : []
}

/** The files that the cameras made; what is saved here says where a moment stands in them. */
export function EditDesk({ shootId, version, document: written, cameras, offered, told, invented }: EditDeskProps) {
  const saved = useSaved(shootId, version, written)
  const { document, change, problems } = saved
  const taken = useActions(document, change)
  const clips = clipsOf(document)
  const shown = clips.flatMap((_, i) => clipFields(i, cameras))
  const add = (more: readonly object[]) => change(setAt(document, '/clips', [...clips, ...more]))
  return (
    <>
      <SaveLine saved={saved} problems={problems.filter((problem) => !fieldAt(shown, problem.pointer))} />
      {clips.length === 0 && <NoClips told={told} invented={invented} shootId={shootId} />}
      {clips.map((clip, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place in the document
        <Fragment key={i}>
          <UndoAt taken={taken} at={`/clips/${i}`} />
          <fieldset className="border-b border-rule pb-3">
            <legend className="sr-only">{clipNumbered(i + 1)}</legend>
            <div className="grid grid-cols-2 items-start gap-x-6 sm:grid-cols-3 lg:grid-cols-6">
              {clipFields(i, cameras).map((field) => (
                <Field
                  key={field.key}
                  label={field.label}
                  why={i === 0 ? field.why : undefined}
                  options={field.options}
                  value={field.read(document)}
                  fault={problems.find((problem) => fieldAt([field], problem.pointer))?.sentence}
                  onChange={(text) => change(field.write(document, text))}
                />
              ))}
            </div>
            <div className="flex flex-wrap items-baseline justify-between gap-x-6">
              <Told
                told={told.find(({ id }) => id === (clip as { id?: unknown }).id)}
                shootId={shootId}
                invented={invented}
              />
              <button
                type="button"
                className="textlink"
                onClick={() => taken.act(takenOut(clipNumbered(i + 1)), withoutClip(document, i), `/clips/${i}`)}
              >
                {takeOut}
              </button>
            </div>
          </fieldset>
        </Fragment>
      ))}
      <UndoAt taken={taken} at={`/clips/${clips.length}`} />
      {told.some(({ fault }) => fault === null) && <p className="small mt-2">{drawnAsFetched}</p>}
      <p className="mt-4 flex flex-wrap gap-4">
        <button type="button" className="btn" onClick={() => add([emptyClip(clips.length, cameras)])}>
          {addClip}
        </button>
        {offered.length > 0 && clips.length === 0 && (
          <button type="button" className="btn" onClick={() => add(offered)}>
            {clipsFromTakes(offered.length)}
          </button>
        )}
      </p>
    </>
  )
}

const emptyClip = (count: number, cameras: readonly string[]) => ({
  id: `${cameras[0] ?? 'A'}${String(count + 1).padStart(3, '0')}`,
  camera: cameras[0] ?? 'A',
  start: '',
  rate: '25',
})
/** The last one takes the whole list with it. */
const withoutClip = (document: ShootDocument, i: number) =>
  removeAt(document, clipsOf(document).length === 1 ? '/clips' : `/clips/${i}`)

type ToldProps = { shootId: string; invented: boolean }
function NoClips({ told, shootId, invented }: ToldProps & { told: readonly ClipTold[] }) {
  if (told.length === 0) return <p className="small">{clipsWhy}</p>
  return (
    <>
      <p className="small">{clipsMadeUp}</p>
      <ul className="m-0 mt-2 list-none p-0">
        {told.map((one) => (
          <li key={one.id} className="grid grid-cols-[4rem_1fr] items-baseline gap-x-3 border-b border-rule py-1.5">
            <span className="font-semibold">{one.id}</span>
            <Told told={one} shootId={shootId} invented={invented} />
          </li>
        ))}
      </ul>
    </>
  )
}

function Told({ told, shootId, invented }: ToldProps & { told: ClipTold | undefined }) {
  if (!told) return null
  const query = `?${new URLSearchParams({ clip: told.id, ...(invented ? { day: 'rehearsed' } : {}) })}`
  return (
    <span className="flex flex-wrap items-baseline gap-x-6">
      <span className="flex-[1_1_18rem]">{told.words}</span>
      {told.fault === null ? (
        <>
          <a className="textlink" href={`/shoots/${shootId}/edit/overlay.zip${query}`} download>
            {overlayOfPng(told.id)}
          </a>
          <a className="textlink" href={`/shoots/${shootId}/edit/overlay.svg${query}`}>
            {onePictureOfSvg(told.id)}
          </a>
        </>
      ) : (
        <span className="small">{told.fault}</span>
      )}
    </span>
  )
}
