/** Who may do what. The server asks this table for every request; a route without a row is not there for the crew. */

/** A calendar reads the calls of one person by a key in its address: it can carry no cookie. */
export type Role = 'owner' | 'producer' | 'crew' | 'viewer' | 'device' | 'calendar'
type Who = Role | 'nobody'

/** What a crew link or a device key lets somebody be in one shoot. */
export interface Grant {
  readonly shoot: string
  readonly role: Exclude<Role, 'owner'>
  /** The person of the shoot, or null for a device. */
  readonly person: string | null
}

/** Who sends a request. */
export interface Visitor {
  readonly owner: boolean
  readonly grants: readonly Grant[]
  /** The session or key by which they came; null for nobody. */
  readonly by: string | null
  /** The name of the key, where a device sends. */
  readonly device: string | null
}

export const NOBODY: Visitor = { owner: false, grants: [], by: null, device: null }
/** Without --crew whoever sits at this computer is the owner. */
export const HERE: Visitor = { owner: true, grants: [], by: null, device: null }

const OWNER: readonly Who[] = ['owner']
const EDITORS: readonly Who[] = ['owner', 'producer']
const READERS: readonly Who[] = ['owner', 'producer', 'crew', 'viewer']
const LOGGERS: readonly Who[] = ['owner', 'producer', 'crew']
const SENDERS: readonly Who[] = ['owner', 'producer', 'crew', 'device']
const EVERYBODY: readonly Who[] = ['nobody', 'owner', 'producer', 'crew', 'viewer', 'device']

export interface Row {
  readonly method: 'GET' | 'POST' | 'PUT' | 'DELETE'
  /** As the folders under app say it. */
  readonly path: string
  readonly who: readonly Who[]
}
const row = (method: Row['method'], path: string, who: readonly Who[]): Row => ({ method, path, who })

export const ROUTES: readonly Row[] = [
  row('GET', '/', READERS),
  row('GET', '/help', READERS),
  row('GET', '/help/[guide]', READERS),
  row('GET', '/door', EVERYBODY),
  row('GET', '/join', EVERYBODY),
  row('GET', '/trust', EVERYBODY),
  row('GET', '/trust/set.crt', EVERYBODY),
  // Whether the card is open to everybody the page itself asks of the shoot.
  row('GET', '/cards/[cardId]', EVERYBODY),
  // For developers: every part of the screens in every state.
  row('GET', '/components', OWNER),
  row('GET', '/shoots/new', OWNER),
  row('GET', '/shoots/[shootId]/plan', READERS),
  row('GET', '/shoots/[shootId]/day', READERS),
  row('GET', '/shoots/[shootId]/calls', READERS),
  row('GET', '/shoots/[shootId]/card', READERS),
  row('GET', '/shoots/[shootId]/card/sheet', READERS),
  row('GET', '/shoots/[shootId]/wrap', READERS),
  row('GET', '/shoots/[shootId]/crew', EDITORS),
  row('GET', '/shoots/[shootId]/crew/person', OWNER),
  row('GET', '/shoots/[shootId]/set', READERS),
  row('GET', '/shoots/[shootId]/set/desk', READERS),
  row('GET', '/shoots/[shootId]/set/presenter', READERS),
  row('GET', '/shoots/[shootId]/set/rehearsal', READERS),
  row('GET', '/shoots/[shootId]/set/readings', EDITORS),
  row('GET', '/shoots/[shootId]/set/continuity', READERS),
  row('GET', '/shoots/[shootId]/card.pdf', READERS),
  row('GET', '/shoots/[shootId]/card.md', READERS),
  row('GET', '/shoots/[shootId]/card.txt', READERS),
  row('GET', '/shoots/[shootId]/card.json', READERS),
  row('GET', '/shoots/[shootId]/description.txt', READERS),
  row('GET', '/shoots/[shootId]/call-sheet.pdf', READERS),
  row('GET', '/shoots/[shootId]/prep-list.pdf', READERS),
  row('GET', '/shoots/[shootId]/risk-sheet.pdf', READERS),
  row('GET', '/shoots/[shootId]/edit', LOGGERS),
  row('GET', '/shoots/[shootId]/edit/continuity', LOGGERS),
  row('GET', '/shoots/[shootId]/edit/chapters.vtt', LOGGERS),
  row('GET', '/shoots/[shootId]/edit/captions.vtt', LOGGERS),
  row('GET', '/shoots/[shootId]/edit/takes.csv', LOGGERS),
  row('GET', '/shoots/[shootId]/edit/overlay.svg', LOGGERS),
  row('GET', '/shoots/[shootId]/edit/overlay.zip', LOGGERS),

  row('GET', '/healthz', EVERYBODY),
  row('GET', '/readyz', EVERYBODY),
  row('GET', '/api/openapi.json', EVERYBODY),
  row('GET', '/api/me', EVERYBODY),
  row('POST', '/api/door/passphrase', EVERYBODY),
  row('POST', '/api/door/sign-in', EVERYBODY),
  row('POST', '/api/door/sign-out', EVERYBODY),
  row('POST', '/api/door/join', EVERYBODY),
  row('POST', '/api/door/carry', READERS),

  row('GET', '/api/shoots', READERS),
  row('POST', '/api/shoots', OWNER),
  row('GET', '/api/shoots/[id]', READERS),
  row('PUT', '/api/shoots/[id]', EDITORS),
  row('POST', '/api/shoots/[id]/undo', EDITORS),
  row('GET', '/api/shoots/[id]/export', READERS),
  row('GET', '/api/shoots/[id]/archive', EDITORS),
  row('GET', '/api/shoots/[id]/people/[personId]', OWNER),
  row('PUT', '/api/archives/[upload]', OWNER),
  row('POST', '/api/archives', OWNER),
  row('GET', '/api/shoots/[id]/samples', READERS),
  row('GET', '/api/shoots/[id]/calls.ics', [...READERS, 'calendar']),
  row('GET', '/api/shoots/[id]/set-day', READERS),
  row('GET', '/api/shoots/[id]/events', READERS),
  row('GET', '/api/shoots/[id]/log', READERS),
  row('POST', '/api/shoots/[id]/log', SENDERS),
  row('POST', '/api/shoots/[id]/photos', LOGGERS),
  row('GET', '/api/shoots/[id]/photos/[name]', READERS),
  row('POST', '/api/shoots/[id]/cookers', EDITORS),
  row('POST', '/api/shoots/[id]/cookers/[cookerId]', EDITORS),
  row('POST', '/api/shoots/[id]/links', EDITORS),
  row('DELETE', '/api/shoots/[id]/links/[linkId]', EDITORS),
  row('POST', '/api/shoots/[id]/keys', EDITORS),
  row('DELETE', '/api/shoots/[id]/keys/[keyId]', EDITORS),

  // They keep nothing and cost much: for those who plan. A page that everybody reads asks for the cut by itself.
  row('POST', '/api/forecast', EDITORS),
  row('POST', '/api/preview', EDITORS),
  row('POST', '/api/gains', EDITORS),
  row('POST', '/api/cut-face', READERS),
  row('POST', '/api/what-if', EDITORS),
]

const partsOf = (path: string) => path.split('/').slice(1)
const isOpen = (part: string) => part.startsWith('[')
const fits = (pattern: readonly string[], parts: readonly string[]) =>
  pattern.length === parts.length && pattern.every((part, i) => (isOpen(part) ? parts[i] !== '' : part === parts[i]))
/** A row that says a part by name goes before one that leaves it open, as in Next's own routing. */
const openParts = ({ path }: Row) => partsOf(path).filter(isOpen).length
const BY_NAME_FIRST = [...ROUTES].sort((a, b) => openParts(a) - openParts(b))
const PATTERNS = BY_NAME_FIRST.map((one) => ({ row: one, pattern: partsOf(one.path) }))

/** Names inside a path as Next hands them to a route; what does not decode is no name. */
function decoded(pathname: string): readonly string[] | null {
  try {
    const parts = partsOf(pathname).map(decodeURIComponent)
    return parts.some((part) => part.includes('\0')) ? null : parts
  } catch {
    return null
  }
}
/** Whether each part of an address can be a name: no database and no disk takes a NUL. */
export const isAddress = (pathname: string) => decoded(pathname) !== null
/** The methods that an address takes; none where there is nothing. */
export function methodsAt(pathname: string): readonly string[] {
  const parts = decoded(pathname) ?? []
  return PATTERNS.filter(({ pattern }) => fits(pattern, parts)).map(({ row }) => row.method)
}

export function rowOf(
  method: string,
  pathname: string,
): { readonly row: Row; readonly shoot: string | null } | undefined {
  const asked = method === 'HEAD' ? 'GET' : method
  const parts = decoded(pathname) ?? []
  const found = PATTERNS.find(({ row, pattern }) => row.method === asked && fits(pattern, parts))
  if (!found) return undefined
  const at = found.pattern.findIndex((part, i) => isOpen(part) && found.pattern[i - 1] === 'shoots')
  return { row: found.row, shoot: parts[at] ?? null }
}

export type Verdict = 'in' | 'signed-out' | 'may-not' | 'not-found'

/** Whether a visitor may do this. Another's shoot is not found, so that nobody learns which shoots there are. */
export function mayDo(visitor: Visitor, method: string, pathname: string): Verdict {
  const asked = rowOf(method, pathname)
  if (visitor.owner) return asked && !asked.row.who.includes('owner') ? 'may-not' : 'in'
  if (!asked) return 'not-found'
  const { row, shoot } = asked
  if (row.who.includes('nobody')) return 'in'
  if (visitor.grants.length === 0) return 'signed-out'
  const here = visitor.grants.filter((grant) => shoot === null || grant.shoot === shoot)
  if (here.length === 0) return 'not-found'
  return here.some(({ role }) => row.who.includes(role)) ? 'in' : 'may-not'
}

const BY_RANK: readonly Role[] = ['producer', 'crew', 'viewer', 'device', 'calendar']
/** The most that somebody is, in one shoot or in any. */
export function roleOf({ owner, grants }: Visitor, shoot?: string): Role | null {
  if (owner) return 'owner'
  const roles = grants.filter((grant) => shoot === undefined || grant.shoot === shoot).map(({ role }) => role)
  return BY_RANK.find((role) => (roles as Role[]).includes(role)) ?? null
}

export const maySee = (visitor: Visitor, shoot: string) => visitor.owner || roleOf(visitor, shoot) !== null
export const mayEdit = (visitor: Visitor, shoot: string) => EDITORS.includes(roleOf(visitor, shoot) ?? 'nobody')
