import sans from '@fontsource-variable/sofia-sans-semi-condensed/files/sofia-sans-semi-condensed-latin-wght-normal.woff2'
import serif from '@fontsource-variable/vollkorn/files/vollkorn-latin-wght-normal.woff2'
import { preload } from 'react-dom'

/** Asks for the letters of every first view with the page itself; by the style sheet they would be asked for a turn later. */
export function askForFirstLetters() {
  for (const letters of [sans, serif]) preload(letters, { as: 'font', type: 'font/woff2', crossOrigin: 'anonymous' })
}
