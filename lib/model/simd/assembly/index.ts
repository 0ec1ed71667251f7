/** What the kernel offers to TypeScript. `npm run kernel` assembles it into lib/model/simd/bytes.ts. */
export { advance } from './march'
export { multiplyAdd } from './peak'
