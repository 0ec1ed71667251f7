'use client'
import { Choice } from './choice'
import { useSet } from './set-context'

/** Which camera; nothing to choose where there is one. */
export function CameraChoice({ value, onChoose }: { value: string; onChoose: (camera: string) => void }) {
  const { cameras } = useSet().facts
  if (cameras.length < 2) return null
  return <Choice name="Camera" value={value} options={cameras.map((id) => [id, id] as const)} onChoose={onChoose} />
}
