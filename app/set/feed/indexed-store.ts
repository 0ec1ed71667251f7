import { MemoryStore } from './memory-store'
import { type FeedStore, idOf, type Kept, type KeptDay, type KeptLine } from './store'

const NAME = 'emberslate-set'
const VERSION = 1
/** Keys begin with the shoot; `own` is about the device. */
const STORES = ['own', 'days', 'lines', 'fired'] as const
type StoreName = (typeof STORES)[number]

/** IndexedDB, which an insecure origin has too; memory where a browser refuses it. */
export async function openStore(shoot: string): Promise<FeedStore> {
  try {
    const database = await openDatabase()
    await forgetLongPast(database, Date.now()).catch((fault) => console.warn('Old days stay on this device:', fault))
    return new IndexedStore(database, shoot)
  } catch (fault) {
    console.warn('This browser keeps nothing:', fault)
    return new MemoryStore()
  }
}

/** Who signs out leaves no day behind. What the server has not confirmed stays: it is nowhere else. */
export async function forgetDays(): Promise<void> {
  const database = await openDatabase()
  const work = database.transaction(STORES, 'readwrite')
  for (const name of ['days', 'fired'] as const) work.objectStore(name).clear()
  dropSent(work.objectStore('lines').openCursor())
  await committed(work)
  database.close()
}

/** All of one shoot but what waits to be sent. */
function forgetOne(work: IDBTransaction, shoot: string): void {
  work.objectStore('days').delete([shoot])
  work.objectStore('own').delete(['person', shoot])
  const of = IDBKeyRange.bound([shoot], [shoot, []])
  work.objectStore('fired').delete(of)
  dropSent(work.objectStore('lines').openCursor(of))
}
function dropSent(lines: IDBRequest<IDBCursorWithValue | null>): void {
  lines.onsuccess = () => {
    const at = lines.result
    if (!at) return
    if ((at.value as KeptLine).receipt) at.delete()
    at.continue()
  }
}
/** Pages of the shoot that were kept for when there is no network; an insecure origin has none. */
async function forgetPages(shoot: string): Promise<void> {
  if (!('caches' in globalThis)) return
  for (const name of await caches.keys()) {
    const cache = await caches.open(name)
    for (const request of await cache.keys())
      if (new URL(request.url).pathname.startsWith(`/shoots/${shoot}/`)) await cache.delete(request)
  }
}

/** A day that was not opened for so long goes when any other is. */
const LONG_PAST_MS = 60 * 86_400_000
async function forgetLongPast(database: IDBDatabase, now: number): Promise<void> {
  const work = database.transaction(STORES, 'readwrite')
  const days = work.objectStore('days').openCursor()
  days.onsuccess = () => {
    const at = days.result
    if (!at) return
    const { opening } = at.value as KeptDay
    if (now - opening.now > LONG_PAST_MS) forgetOne(work, (at.key as [string])[0])
    at.continue()
  }
  await committed(work)
}

function openDatabase(): Promise<IDBDatabase> {
  const request = indexedDB.open(NAME, VERSION)
  request.onupgradeneeded = () => {
    for (const name of STORES) request.result.createObjectStore(name)
  }
  return answered(request)
}

const answered = <T>(request: IDBRequest<T>) =>
  new Promise<T>((resolve, reject) => {
    request.onsuccess = () => resolve(request.result)
    request.onerror = () => reject(request.error)
  })

/** Settles when the disk has it. */
const committed = (work: IDBTransaction) =>
  new Promise<void>((resolve, reject) => {
    work.oncomplete = () => resolve()
    work.onabort = () => reject(work.error ?? new Error('This device did not keep it.'))
  })

class IndexedStore implements FeedStore {
  readonly lasting = true

  constructor(
    readonly database: IDBDatabase,
    readonly shoot: string,
  ) {}

  async open(device: string): Promise<Kept> {
    const work = this.database.transaction(STORES, 'readwrite', { durability: 'strict' })
    const own = work.objectStore('own')
    const of = IDBKeyRange.bound([this.shoot], [this.shoot, []])
    const [named, person, day, lines, fired] = await Promise.all([
      answered<string | undefined>(own.get('device')),
      answered<string | undefined>(own.get(['person', this.shoot])),
      answered<KeptDay | undefined>(work.objectStore('days').get([this.shoot])),
      answered<KeptLine[]>(work.objectStore('lines').getAll(of)),
      answered(work.objectStore('fired').getAllKeys(of)),
    ])
    if (named === undefined) own.put(device, 'device')
    // A full device still opens its board; without its name kept it takes another next time.
    await committed(work).catch((fault) => console.warn('This device did not keep its name:', fault))
    return {
      device: named ?? device,
      person: person ?? null,
      day: day ?? null,
      lines,
      fired: new Set(fired.map((key) => (key as [string, string])[1])),
    }
  }

  keepPerson(person: string | null): Promise<void> {
    const key = ['person', this.shoot]
    return this.#write('own', (store) => (person === null ? store.delete(key) : store.put(person, key)))
  }
  keepDay(day: KeptDay): Promise<void> {
    return this.#write('days', (store) => store.put(day, [this.shoot]))
  }
  keepLines(lines: readonly KeptLine[]): Promise<void> {
    return this.#write('lines', (store) => {
      for (const line of lines) store.put(line, [this.shoot, idOf(line)])
    })
  }

  async fire(key: string, at: number): Promise<boolean> {
    const work = this.database.transaction('fired', 'readwrite', { durability: 'strict' })
    const adding = work.objectStore('fired').add(at, [this.shoot, key])
    return new Promise((resolve, reject) => {
      adding.onsuccess = () => resolve(true)
      adding.onerror = (event) => {
        event.preventDefault()
        if (adding.error?.name === 'ConstraintError') resolve(false)
        else reject(adding.error)
      }
    })
  }

  async forget(): Promise<void> {
    const work = this.database.transaction(STORES, 'readwrite', { durability: 'strict' })
    forgetOne(work, this.shoot)
    await Promise.all([committed(work), forgetPages(this.shoot)])
  }
  close(): void {
    this.database.close()
  }

  #write(name: StoreName, put: (store: IDBObjectStore) => unknown): Promise<void> {
    const work = this.database.transaction(name, 'readwrite', { durability: 'strict' })
    put(work.objectStore(name))
    return committed(work)
  }
}
