import type { ReactNode } from 'react'

/** A table wider than a phone, in a box of its own that scrolls sideways, by keys too. */
export function Sideways({ of, className = '', children }: { of: string; className?: string; children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: it is no set of fields
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys [WCAG 2.2, 2.1.1]
    <div className={`scroll-x ${className}`} role="group" aria-label={of} tabIndex={0}>
      {children}
    </div>
  )
}
