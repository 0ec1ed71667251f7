'use client'
import { backToLaptopsView, fromFile, fromLoggersFile, readings } from '../../words/readings'
import { LinkLine } from '../link-line'
import { LiveSet, type LiveSetProps } from '../live-set'
import { Devices, InTheLog } from './devices'
import { FromFile } from './from-file'
import { HowToSend } from './how-to-send'

interface Props extends LiveSetProps {
  /** The shoot's. */
  readonly date: string
  /** Where a device reaches this server. */
  readonly origin: string
}

/** Readings that nobody types: from files and from devices. */
export function ReadingsDesk({ date, origin, ...props }: Props) {
  const { shootId, opening } = props
  return (
    <LiveSet {...props} inPage>
      <div className="readings-desk">
        <LinkLine lacks={null} />
        <h1>{readings}</h1>
        <p className="small">
          {fromLoggersFile}{' '}
          <a className="textlink" href={`/shoots/${shootId}/set/desk`}>
            {backToLaptopsView}
          </a>
        </p>
        <section aria-label={fromFile}>
          <h2>{fromFile}</h2>
          <FromFile shootId={shootId} date={date} />
        </section>
        <InTheLog shootId={shootId} />
        <Devices />
        <HowToSend shootId={shootId} origin={origin} cooks={opening.day.cooks.map(({ id }) => id)} />
      </div>
    </LiveSet>
  )
}
