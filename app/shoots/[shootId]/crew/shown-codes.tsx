'use client'
import type { LinkRole } from '@/lib/data/door/links'
import type { QrDrawing } from '@/lib/export/qr'
import { codeFor, codesToScan, printWords, putAway } from '../../../words/crew'

export interface ShownCode {
  readonly name: string
  readonly link: { readonly person: string; readonly role: LinkRole }
  readonly url: string
  readonly qr: QrDrawing
}

/** Codes that were just made: to scan, to print, to copy. They are nowhere else. */
export function ShownCodes({ codes, forget }: { codes: readonly ShownCode[]; forget: () => void }) {
  if (codes.length === 0) return null
  return (
    <section aria-label={codesToScan} className="mt-4 border-y-2 border-ink py-4">
      <h2 className="sr-only">{codesToScan}</h2>
      <ul className="m-0 grid list-none grid-cols-1 gap-6 p-0 sm:grid-cols-2 lg:grid-cols-4 print:grid-cols-3">
        {codes.map((code) => (
          <li key={code.link.person} className="break-inside-avoid">
            <h3>
              {code.name} <span className="small font-normal">{code.link.role}</span>
            </h3>
            {/* Dark on white whatever the page: cameras read nothing else. */}
            <svg
              role="img"
              aria-label={codeFor(code.name)}
              viewBox={`0 0 ${code.qr.size} ${code.qr.size}`}
              shapeRendering="crispEdges"
              className="mt-2 block w-full max-w-64 bg-white"
            >
              <path d={code.qr.path} fill="#000" />
            </svg>
            <p className="small mt-1 break-all">{code.url}</p>
          </li>
        ))}
      </ul>
      <p className="no-print mt-4 flex flex-wrap gap-4">
        <button type="button" className="btn main" onClick={() => window.print()}>
          {printWords}
        </button>
        <button type="button" className="btn" onClick={forget}>
          {putAway}
        </button>
      </p>
    </section>
  )
}
