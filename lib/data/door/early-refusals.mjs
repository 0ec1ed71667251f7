/** What is refused before the app is asked, since it cannot be handed on. Plain Node: the start command says it. */
export const EARLY = {
  'bad-request': [
    400,
    'This is no HTTP request that can be read. Send it again as HTTP/1.1, with one length or in chunks.',
  ],
  'no-such-route': [404, 'There is nothing at this address. What there is stands in /api/openapi.json.'],
  'wrong-method': [405, 'This address does not take this method. What it takes stands in the header Allow.'],
  'too-slow': [408, 'The request did not come in whole in time. Send it again.'],
  'long-head': [
    431,
    'Address and headers are longer than 16 kB together. Send shorter ones; delete the cookies of this site.',
  ],
}
