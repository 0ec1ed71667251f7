import type { ReactNode } from 'react'

/** A group of parts with its name. */
export const Part = ({ name, children }: { readonly name: string; readonly children: ReactNode }) => (
  <section className="part">
    <h2>{name}</h2>
    {children}
  </section>
)
