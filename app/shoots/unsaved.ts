/** Saves what is still being typed on this page; false where it cannot be saved. */
type Save = () => Promise<boolean>

/** The desks of this page that save by themselves. */
const desks = new Set<Save>()

export function whileOpen(save: Save): () => void {
  desks.add(save)
  return () => {
    desks.delete(save)
  }
}

/** Whether all that was typed is saved, after saving what waits. */
export async function allSaved(): Promise<boolean> {
  const saved = await Promise.all([...desks].map((save) => save()))
  return saved.every(Boolean)
}
