'use client'
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
    <LiveSet {...props}>
      <div className="readings-desk">
        <LinkLine lacks={null} />
        <h1>Readings</h1>
        <p className="small">
          From a logger’s file or from a device.{' '}
          <a className="textlink" href={`/shoots/${shootId}/set/desk`}>
            Back to the laptop’s view
          </a>
        </p>
        <section aria-label="From a file">
          <h2>From a file</h2>
          <FromFile shootId={shootId} date={date} />
        </section>
        <InTheLog shootId={shootId} />
        <Devices />
        <HowToSend shootId={shootId} origin={origin} cooks={opening.day.cooks.map(({ id }) => id)} />
      </div>
    </LiveSet>
  )
}
