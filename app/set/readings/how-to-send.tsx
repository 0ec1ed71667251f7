const BODY = (cook: string) => `{"sent": "'$(date -u +%FT%TZ)'", "entries": [
  {"id": "'$(date +%s)'0000000000000001", "at": "'$(date -u +%FT%TZ)'",
   "by": {"device": "logger-1"}, "kind": "reading",
   "cook": "${cook}", "sensor": "core", "temp": "46.2 °C"}]}`

/** How a device sends its readings by itself. */
export function HowToSend({ shootId, origin, cooks }: { shootId: string; origin: string; cooks: readonly string[] }) {
  return (
    <section aria-label="From a device" className="how-to-send">
      <h2>From a device</h2>
      <p>
        A thermometer or logger that is on the network sends its own readings. It needs a key, made on{' '}
        <a href={`/shoots/${shootId}/crew`}>Crew links</a>; its name there is the device’s name here. Without --crew no
        key is asked for.
      </p>
      <pre>
        <code>{`curl ${origin}/api/shoots/${shootId}/log \\
  -H 'Authorization: Bearer KEY' -H 'Content-Type: application/json' \\
  -d '${BODY(cooks[0] ?? 'cook')}'`}</code>
      </pre>
      <dl>
        <dt>sent</dt>
        <dd>
          What the device’s clock says as it sends. The set reads from it how far that clock is off and puts every time
          right; nobody has to set it.
        </dd>
        <dt>at</dt>
        <dd>When it was read, by the same clock, with its offset or Z. Late and out of order is fine.</dd>
        <dt>id</dt>
        <dd>
          26 letters and digits, a ULID, or 26 digits of your own that begin with 0 to 7: seconds since 1970 and a
          number of the probe will do. Sent again under the same id, a reading is kept once: when in doubt, send again.
        </dd>
        <dt>cook</dt>
        <dd>{cooks.join(' or ')}</dd>
        <dt>sensor</dt>
        <dd>core, cooker or air; further ones core-2, cooker-2 up to -9.</dd>
        <dt>temp</dt>
        <dd>“46.2 °C” or “115.2 °F”, from −40 to 700 °C.</dd>
        <dt>Batches</dt>
        <dd>1 to 500 entries, at most 1 MB, in one request; after hours without a network send in pieces.</dd>
        <dt>Answers</dt>
        <dd>
          200: each entry by its id is “kept”, “known” (it was here before) or “refused” with a sentence. 422: nothing
          of it could be kept, and why. 401 or 403: the key. 429: wait as Retry-After says. 5xx or no answer: send the
          same again. All of it in <a href="/api/openapi.json">/api/openapi.json</a>.
        </dd>
      </dl>
    </section>
  )
}
