import {
  answers,
  answersWhy,
  at,
  atWhy,
  batches,
  batchesWhy,
  cookWords,
  crewLinks,
  curlExample,
  fromDevice,
  fromDeviceLead,
  id,
  idWhy,
  keyNameIsDevice,
  openApiPath,
  sensor,
  sensorWhy,
  sent,
  sentWhy,
  temp,
  tempWhy,
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
        {fromDeviceLead} <a href={`/shoots/${shootId}/crew`}>{crewLinks}</a>
        {keyNameIsDevice}
      </p>
      <pre>
        <code>{curlExample(origin, shootId, BODY(cooks[0] ?? 'cook'))}</code>
      </pre>
      <dl>
        <dt>{sent}</dt>
        <dd>{sentWhy}</dd>
        <dt>{at}</dt>
        <dd>{atWhy}</dd>
        <dt>{id}</dt>
        <dd>{idWhy}</dd>
        <dt>{cookWords}</dt>
        <dd>{cooks.join(' or ')}</dd>
        <dt>{sensor}</dt>
        <dd>{sensorWhy}</dd>
        <dt>{temp}</dt>
        <dd>{tempWhy}</dd>
        <dt>{batches}</dt>
        <dd>{batchesWhy}</dd>
        <dt>{answers}</dt>
        <dd>
          {answersWhy} <a href="/api/openapi.json">{openApiPath}</a>.
        </dd>
      </dl>
    </section>
  )
}
