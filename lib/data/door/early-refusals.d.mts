export const EARLY: {
  readonly 'bad-request': readonly [400, string]
  readonly 'no-such-route': readonly [404, string]
  readonly 'wrong-method': readonly [405, string]
  readonly 'too-slow': readonly [408, string]
  readonly 'long-head': readonly [431, string]
}
