import '@fontsource-variable/vollkorn/index.css'
import '@fontsource-variable/vollkorn/wght-italic.css'
import '@fontsource-variable/sofia-sans-semi-condensed/index.css'
import '@fontsource-variable/sofia-sans-condensed/index.css'
import './stand-in-letters.css'
import './globals.css'
import type { Metadata } from 'next'
import type { ReactNode } from 'react'
import { askForFirstLetters } from './first-letters'
import { readersWay } from './locale'
import { Reader } from './ui/reader'
import { inOneLine, skipToPage } from './words/shared'

/** Each answer names its own scripts (proxy.ts), so no page is drawn before it is asked for. */
export const dynamic = 'force-dynamic'

export const metadata: Metadata = {
  title: { default: 'Emberslate', template: '%s · Emberslate' },
  description: inOneLine,
  manifest: '/manifest.webmanifest',
  icons: { icon: '/icons/icon.svg', apple: '/icons/icon-180.png' },
}

export default async function RootLayout({ children }: { children: ReactNode }) {
  askForFirstLetters()
  return (
    <html lang="en">
      <body>
        <a className="sr-only focus:not-sr-only" href="#main">
          {skipToPage}
        </a>
        <Reader way={await readersWay()}>{children}</Reader>
      </body>
    </html>
  )
}
