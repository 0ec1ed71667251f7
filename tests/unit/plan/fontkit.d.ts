/** fontkit comes with the PDF printer and without types; as much of it as the test of printable letters uses. */
declare module 'fontkit' {
  export interface Font {
    readonly characterSet: readonly number[]
  }
  export function create(file: Uint8Array): Font
}
