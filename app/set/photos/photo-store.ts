export interface WaitingPhoto {
  readonly name: string
  readonly bytes: Uint8Array<ArrayBuffer>
  /** The server did not take it: it stays here, and is not sent again while the page is open. */
  readonly refused?: true
}
/** Photographs of one shoot that the server has not confirmed, kept through reloads. */
export interface PhotoStore {
  /** Whether what is kept outlives the page. */
  readonly lasting: boolean
  open(): Promise<readonly WaitingPhoto[]>
  /** Settles when it is safe. */
  keep(photo: WaitingPhoto): Promise<void>
  drop(name: string): Promise<void>
}

export class MemoryPhotos implements PhotoStore {
  readonly lasting = false
  readonly kept = new Map<string, WaitingPhoto>()
  async open(): Promise<readonly WaitingPhoto[]> {
    return [...this.kept.values()]
  }
  async keep(photo: WaitingPhoto): Promise<void> {
    this.kept.set(photo.name, photo)
  }
  async drop(name: string): Promise<void> {
    this.kept.delete(name)
  }
}

const STORE = 'waiting'

/** IndexedDB under a name of its own, beside the outbox; memory where a browser refuses it. */
export async function openPhotoStore(shoot: string): Promise<PhotoStore> {
  try {
    const request = indexedDB.open('emberslate-photos', 1)
    request.onupgradeneeded = () => request.result.createObjectStore(STORE)
    return new IndexedPhotos(await answered(request), shoot)
  } catch (fault) {
    console.warn('This browser keeps no photographs:', fault)
    return new MemoryPhotos()
  }
}

const answered = <T>(request: IDBRequest<T>) =>
  new Promise<T>((resolve, reject) => {
    request.onsuccess = () => resolve(request.result)
    request.onerror = () => reject(request.error)
  })

class IndexedPhotos implements PhotoStore {
  readonly lasting = true
  constructor(
    readonly database: IDBDatabase,
    readonly shoot: string,
  ) {}

  open(): Promise<readonly WaitingPhoto[]> {
    const of = IDBKeyRange.bound([this.shoot], [this.shoot, []])
    return answered<WaitingPhoto[]>(this.database.transaction(STORE).objectStore(STORE).getAll(of))
  }
  keep(photo: WaitingPhoto): Promise<void> {
    return this.#write((store) => store.put(photo, [this.shoot, photo.name]))
  }
  drop(name: string): Promise<void> {
    return this.#write((store) => store.delete([this.shoot, name]))
  }

  #write(put: (store: IDBObjectStore) => unknown): Promise<void> {
    const work = this.database.transaction(STORE, 'readwrite', { durability: 'strict' })
    put(work.objectStore(STORE))
    return new Promise((resolve, reject) => {
      work.oncomplete = () => resolve()
      work.onabort = () => reject(work.error ?? new Error('This phone did not keep the photograph.'))
    })
  }
}
