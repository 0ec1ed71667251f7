import { type FileHandle, open } from 'node:fs/promises'
import { pipeline } from 'node:stream/promises'
import { constants, crc32, createDeflateRaw } from 'node:zlib'

/** PKWARE's APPNOTE 6.3, from memory: the structures of a zip file and of its 64-bit form, which `fflate` does not write. */
const LOCAL = 0x04034b50
const AFTER = 0x08074b50
const CENTRAL = 0x02014b50
const END = 0x06054b50
const END_64 = 0x06064b50
const END_64_AT = 0x07064b50
const FULL_32 = 0xffffffff
const FULL_16 = 0xffff
const NEEDS_64 = 45
/** Sizes come after the bytes, and names are UTF-8. */
const FLAGS = (1 << 3) | (1 << 11)
const DEFLATE = 8
/** Made on Unix, so that the mode of a file is read: for its owner alone. */
const MADE_BY = (3 << 8) | NEEDS_64
const MODE = 0o100600 << 16

interface Written {
  readonly name: Buffer
  readonly crc: number
  readonly packed: number
  readonly size: number
  readonly at: number
}

/** A zip file of any size, written as it grows. Its directory comes last: one that was cut off does not open. */
export class ZipWriter {
  readonly #file: FileHandle
  readonly #day: number
  readonly #written: Written[] = []
  #at = 0

  private constructor(file: FileHandle, made: Date) {
    this.#file = file
    this.#day = dosTime(made)
  }
  /** There may be no such file yet; it is for its owner alone. */
  static async create(name: string, made: Date): Promise<ZipWriter> {
    return new ZipWriter(await open(name, 'wx', 0o600), made)
  }

  async add(
    path: string,
    pieces: AsyncIterable<Uint8Array> | Iterable<Uint8Array>,
    isPressed = false,
  ): Promise<number> {
    const [name, at] = [Buffer.from(path), this.#at]
    await this.#put(
      numbers([4, LOCAL], [2, NEEDS_64], ...this.#kind(), [4, 0], [4, 0], [4, 0], [2, name.length], [2, 0]),
    )
    await this.#put(name)
    const began = this.#at
    let [crc, size] = [0, 0]
    async function* counted() {
      for await (const piece of pieces) {
        crc = crc32(piece, crc)
        size += piece.length
        yield piece
      }
    }
    const put = (piece: Uint8Array) => this.#put(piece)
    const level = isPressed ? constants.Z_NO_COMPRESSION : constants.Z_DEFAULT_COMPRESSION
    await pipeline(counted, createDeflateRaw({ level }), async (packed: AsyncIterable<Uint8Array>) => {
      for await (const piece of packed) await put(piece)
    })
    const packed = this.#at - began
    if (Math.max(size, packed) >= FULL_32) throw new Error(`${path} is larger than 4 GB and cannot go into the backup.`)
    await this.#put(numbers([4, AFTER], [4, crc], [4, packed], [4, size]))
    this.#written.push({ name, crc, packed, size, at })
    return size
  }

  /** The directory, and all of it on the disk for good. */
  async end(): Promise<void> {
    const at = this.#at
    for (const one of this.#written) await this.#put(this.#central(one))
    const [length, count] = [this.#at - at, this.#written.length]
    if (at >= FULL_32 || count >= FULL_16) {
      const end = this.#at
      await this.#put(
        numbers(
          [4, END_64],
          [8, 44],
          [2, MADE_BY],
          [2, NEEDS_64],
          [4, 0],
          [4, 0],
          [8, count],
          [8, count],
          [8, length],
          [8, at],
        ),
      )
      await this.#put(numbers([4, END_64_AT], [4, 0], [8, end], [4, 1]))
    }
    const [few, begins] = [Math.min(count, FULL_16), Math.min(at, FULL_32)]
    await this.#put(numbers([4, END], [2, 0], [2, 0], [2, few], [2, few], [4, length], [4, begins], [2, 0]))
    await this.#file.sync()
  }
  close = () => this.#file.close()

  #kind(): readonly Number2[] {
    return [
      [2, FLAGS],
      [2, DEFLATE],
      [4, this.#day],
    ]
  }
  #central({ name, crc, packed, size, at }: Written): Buffer {
    const far = at >= FULL_32 ? numbers([2, 1], [2, 8], [8, at]) : Buffer.alloc(0)
    const head = numbers(
      ...([[4, CENTRAL], [2, MADE_BY], [2, NEEDS_64], ...this.#kind(), [4, crc], [4, packed], [4, size]] as Number2[]),
      ...([
        [2, name.length],
        [2, far.length],
        [2, 0],
        [2, 0],
        [2, 0],
        [4, MODE],
        [4, Math.min(at, FULL_32)],
      ] as Number2[]),
    )
    return Buffer.concat([head, name, far])
  }
  async #put(bytes: Uint8Array): Promise<void> {
    await this.#file.writeFile(bytes)
    this.#at += bytes.length
  }
}

/** How many bytes, and the number in them. */
type Number2 = readonly [2 | 4 | 8, number]
function numbers(...all: readonly Number2[]): Buffer {
  return Buffer.concat(
    all.map(([bytes, value]) => {
      const buffer = Buffer.alloc(8)
      buffer.writeBigUInt64LE(BigInt.asUintN(64, BigInt(value)))
      return buffer.subarray(0, bytes)
    }),
  )
}
function dosTime(at: Date): number {
  const day = ((Math.max(at.getFullYear(), 1980) - 1980) << 9) | ((at.getMonth() + 1) << 5) | at.getDate()
  const time = (at.getHours() << 11) | (at.getMinutes() << 5) | (at.getSeconds() >> 1)
  return day * 65_536 + time
}
