import {
  answers,
  apiOpenapiJson,
  at,
  batches,
  cOrF,
  cookWords,
  coreCookerOrAirFurther,
  crewLinks,
  curlApiShootsLogH,
  eachEntryByItsId,
  fromDevice,
  id,
  itsNameThereIsDevices,
  lettersAndDigitsUlid,
  sensor,
  sent,
  temp,
  thermometerOrLogger,
  toEntriesAtMostMb,
  whatDevicesClockSays,
  whenItWasRead,
} from '../../words/readings'

const BODY = (cook: string) => `{"sent": "'$(date -u +%FT%TZ)'", "entries": [
  {"id": "'$(date +%s)'0000000000000001", "at": "'$(date -u +%FT%TZ)'",
   "by": {"device": "logger-1"}, "kind": "reading",
   "cook": "${cook}", "sensor": "core", "temp": "46.2 °C"}]}`

/** How a device sends its readings by itself. */
export function HowToSend({ shootId, origin, cooks }: { shootId: string; origin: string; cooks: readonly string[] }) {
  return (
    <section aria-label={fromDevice} className="how-to-send">
      <h2>{fromDevice}</h2>
      <p>
        {thermometerOrLogger} <a href={`/shoots/${shootId}/crew`}>{crewLinks}</a>
        {itsNameThereIsDevices}
      </p>
      <pre>
        <code>{curlApiShootsLogH(origin, shootId, BODY(cooks[0] ?? 'cook'))}</code>
      </pre>
      <dl>
        <dt>{sent}</dt>
        <dd>{whatDevicesClockSays}</dd>
        <dt>{at}</dt>
        <dd>{whenItWasRead}</dd>
        <dt>{id}</dt>
        <dd>{lettersAndDigitsUlid}</dd>
        <dt>{cookWords}</dt>
        <dd>{cooks.join(' or ')}</dd>
        <dt>{sensor}</dt>
        <dd>{coreCookerOrAirFurther}</dd>
        <dt>{temp}</dt>
        <dd>{cOrF}</dd>
        <dt>{batches}</dt>
        <dd>{toEntriesAtMostMb}</dd>
        <dt>{answers}</dt>
        <dd>
          {eachEntryByItsId} <a href="/api/openapi.json">{apiOpenapiJson}</a>.
        </dd>
      </dl>
    </section>
  )
}
