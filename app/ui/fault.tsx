/** What is wrong with a field. Its place stands before there is anything to say, so that it is said as it comes, between other words. */
export const Fault = ({ id, children }: { id?: string; children: string | undefined }) => (
  <span className={children ? 'says' : undefined} id={id} aria-live="polite">
    {children}
  </span>
)
