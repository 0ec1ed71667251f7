/** Says what `npm start` would have to make first, for the doctor. */
import { fileURLToPath } from 'node:url'
import { due } from './make-ready.mjs'

process.chdir(fileURLToPath(new URL('../..', import.meta.url)))
console.log(JSON.stringify(due()))
