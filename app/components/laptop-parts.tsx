'use client'
import { useState } from 'react'
import { type CheckedClaim, FINDINGS } from '@/lib/card/claim'
import type { ShootDocument } from '@/lib/plan/shoot'
import { listAt } from '@/lib/plan/sketch'
import { Finding } from '../shoots/[shootId]/card/finding'
import { VerdictMark } from '../shoots/[shootId]/card/verdict-mark'
import { ShotTable } from '../shoots/[shootId]/day/shot-table'
import { SaveLine } from '../shoots/save-line'
import type { Saved, SaveState } from '../shoots/use-saved'
import { Caution, Field } from '../ui/field'
import { Icon, type IconName } from '../ui/signs'
import { Term } from '../ui/term'
import { UndoLine } from '../ui/undo-line'
import { Working } from '../ui/working'
import * as words from '../words/components'
import { iconNames } from '../words/icons'
import { Part } from './part'

const TOKENS = ['paper', 'leaf', 'band', 'ink', 'ink-2', 'ink-3', 'edge', 'rule', 'ember', 'cool'] as const
const SAVE_STATES: readonly SaveState[] = ['saved', 'typing', 'saving', 'wrong', 'away', 'stale']

interface LaptopPartsProps {
  readonly document: ShootDocument
  readonly claim: CheckedClaim | null
}
export function LaptopParts({ document, claim }: LaptopPartsProps) {
  return (
    <>
      <Type />
      <Buttons />
      <Fields />
      <Part name={words.groups.save}>
        {SAVE_STATES.map((state) => (
          <SaveLine key={state} saved={savedIn(state, document)} problems={[]} />
        ))}
      </Part>
      <Lines />
      <Said claim={claim} />
      <Part name={words.groups.term}>
        <p>
          {words.saying} <Term of="carryover" />
        </p>
      </Part>
      <Part name={words.groups.icons}>
        <ul className="in-line">
          {(Object.keys(iconNames) as IconName[]).map((name) => (
            <li key={name}>
              <Icon name={name} /> {iconNames[name]}
            </li>
          ))}
        </ul>
      </Part>
      <Shots document={document} />
    </>
  )
}

const AWAY_SINCE = Date.UTC(2027, 4, 15, 19, 31)
const savedIn = (state: SaveState, document: ShootDocument): Saved => ({
  state,
  document,
  problems: [],
  change: () => {},
  keepMine: async () => {},
  takeTheirs: () => {},
  away: state === 'away' ? { since: AWAY_SINCE, why: null } : null,
  putBy: null,
})

const Type = () => (
  <>
    <Part name={words.groups.tokens}>
      <ul className="swatches">
        {TOKENS.map((token) => (
          <li key={token}>
            <span className="tone swatch" style={{ background: `var(--${token})` }} /> {token}
          </li>
        ))}
      </ul>
    </Part>
    <Part name={words.groups.type}>
      <p className="as-h1">{words.sampleTitle}</p>
      <p className="lead">{words.sampleLead}</p>
      <p>{words.sampleText}</p>
      <p className="small">{words.small}</p>
      <p>
        <span className="time">19:57</span> <span className="win">19:48 to 20:08</span>
      </p>
    </Part>
  </>
)

const Buttons = () => (
  <Part name={words.groups.buttons}>
    <p className="in-line">
      <button type="button" className="btn main">
        {words.main}
      </button>
      <button type="button" className="btn">
        {words.other}
      </button>
      <button type="button" className="btn" disabled>
        {words.off}
      </button>
      <button type="button" className="btn quiet">
        {words.quiet}
      </button>
      <button type="button" className="textlink">
        {words.link}
      </button>
    </p>
  </Part>
)

function Fields() {
  const [weight, setWeight] = useState('3.2 kg')
  const [cooker, setCooker] = useState('kettle')
  const [day, setDay] = useState('2027-05-15')
  const field = { label: words.fieldLabel, onChange: setWeight }
  return (
    <Part name={words.groups.fields}>
      <div className="fields">
        <Field {...field} value="" why={words.fieldWhy} />
        <Field {...field} value={weight} why={words.fieldWhy} />
        <Field {...field} value="3.2" why={words.fieldWhy} fault={words.fieldFault} />
        <Field {...field} value={weight}>
          <Caution>{words.fieldCaution}</Caution>
        </Field>
        <Field
          label={words.choiceLabel}
          value={cooker}
          options={[
            ['kettle', 'kettle, charcoal'],
            ['oven', 'oven'],
          ]}
          onChange={setCooker}
        />
        <Field label={words.dateLabel} type="date" value={day} onChange={setDay} />
      </div>
    </Part>
  )
}

const Lines = () => (
  <Part name={words.groups.lines}>
    <Working what={words.working} done={0.6} />
    <Working what={words.working} />
    <UndoLine said={words.takenOut} undo={() => {}} />
    <p className="status-line">
      <b>{words.status}</b> {words.statusMore}
      <button type="button" className="textlink">
        {words.statusAct}
      </button>
    </p>
  </Part>
)

const Said = ({ claim }: { claim: CheckedClaim | null }) => (
  <Part name={words.groups.said}>
    <div className="conflict">
      <p>{words.conflictWhy}</p>
      <p className="way">{words.conflictWay}</p>
    </div>
    <Caution>{words.caution}</Caution>
    {claim &&
      FINDINGS.map((finding) => (
        <article key={finding} className="finding">
          <p className="said">
            <mark className={finding === 'contradicted' ? 'no' : undefined}>{claim.words}</mark>
          </p>
          <VerdictMark finding={finding} />
          <Finding claim={{ ...claim, finding }} own={false} />
        </article>
      ))}
  </Part>
)

function Shots({ document }: { document: ShootDocument }) {
  const [open, setOpen] = useState<string | null>(null)
  return (
    <Part name={words.groups.tables}>
      <ShotTable
        document={document}
        view={null}
        axis={null}
        problems={[]}
        cameras={listAt<{ id: string }>(document, '/cameras').map(({ id }) => id)}
        open={open}
        onOpen={setOpen}
        control={(field) => (
          <Field key={field.key} label={field.label} value={field.read(document)} onChange={() => {}} />
        )}
        change={() => {}}
        act={() => {}}
        attempt={() => {}}
      />
    </Part>
  )
}
