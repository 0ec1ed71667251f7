'use client'
import { CameraClockSheet } from './camera-clock-sheet'
import { FireSheet } from './fire-sheet'
import { FoodSheet } from './food-sheet'
import { HoldSheet } from './hold-sheet'
import { LateSheet } from './late-sheet'
import { MarkSheet } from './mark-sheet'
import { MealSheet } from './meal-sheet'
import { MoreSheet } from './more-sheet'
import { NoteSheet } from './note-sheet'
import { ProbeSheet } from './probe-sheet'
import { ReadingSheet } from './reading-sheet'
import { ShotSheet } from './shot-sheet'
import { SoundSheet } from './sound-sheet'
import { TakeSheet } from './take-sheet'

export type SheetName =
  | 'reading'
  | 'probe'
  | 'mark'
  | 'take'
  | 'shot'
  | 'late'
  | 'more'
  | 'fire'
  | 'food'
  | 'hold'
  | 'meal'
  | 'note'
  | 'sound'
  | 'camera-clock'
export interface SheetProps {
  readonly close: () => void
  readonly open: (sheet: SheetName) => void
}

const SHEETS: Readonly<Record<SheetName, (props: SheetProps) => React.ReactNode>> = {
  reading: ReadingSheet,
  probe: ProbeSheet,
  mark: MarkSheet,
  take: TakeSheet,
  shot: ShotSheet,
  late: LateSheet,
  more: MoreSheet,
  fire: FireSheet,
  food: FoodSheet,
  hold: HoldSheet,
  meal: MealSheet,
  note: NoteSheet,
  sound: SoundSheet,
  'camera-clock': CameraClockSheet,
}

/** What is open over the board. */
export function OpenSheet({ sheet, ...props }: SheetProps & { sheet: SheetName }) {
  const Open = SHEETS[sheet]
  return <Open {...props} />
}
