// edit/continuity/page.tsx
export const continuityReportWords = 'Continuity report'
export const forEdit = 'For the edit'
export const nothingNoted = 'Nothing was noted. Notes and photographs are taken on the set board: More, Note.'
export const byShot = 'By shot'
export const ofNoShot = 'Of no shot'

// edit/edit-desk.tsx
export const clipWords = 'Clip'
export const cameraWords = 'Camera'
export const firstFrame = 'First frame'
export const itsTimecode = 'Its timecode, "16:05:12:10".'
export const frames = 'Frames'
export const lengthWords = 'Length'
export const clipLengthWhy = 'Such as "4 min 12 s".'
export const beginsInVideo = 'Begins in the video'
export const emptyWhile = 'Empty while it is not cut in.'
export const clipNumbered = (i: number) => `Clip ${i}`
export const takeOut = 'Take out'
export const addClip = 'Add a clip'
export const clipsFromTakes = (count: number) => `Take ${count} from the takes, at 25 a second`
export const clipsWhy = 'A clip for each file: then chapters, takes and the overlay find their timecode.'
export const clipsMadeUp = 'The shoot names no clips. These are made up from the rehearsed takes, one after another:'
export const overlayOfPng = (id: string) => `Overlay of ${id}, PNG`
export const onePictureOfSvg = (id: string) => `One picture of ${id}, SVG`

// edit/edit-lists.tsx
export const takes = 'Takes'
export const noTakeWasLogged = 'No take was logged.'
export const setTimesWhy = 'A time without frames is the set’s clock: no clip is known there.'
export const slateWords = (slate: string) => `slate ${slate}`
export const inWords = 'in'
export const out = 'out'
export const clipHead = 'clip'
export const verdictWords = 'verdict'
export const goodBest = 'good, best'
export const noteWords = 'note'
export const wantsWords = (priority: string, became: string, wants: string) => `${priority}, ${became}. Wants ${wants}.`

// edit/page.tsx
export const clips = 'Clips'
export const missedShotsAndPickUps = 'Missed shots and pick-ups'
export const daysOwnLog = 'The day’s own log'
export const nothingLoggedYet =
  'Nothing was logged yet. Chapters, captions and the overlay want the day’s marks, its takes and readings, and each camera’s clock read once, all from the'
export const setBoard = 'set board'
export const toSeeWhatComes = '. To see what comes of them:'
export const theRehearsedDay = 'the rehearsed day, with invented readings'
export const chaptersWords = 'Chapters'
export const timesOfVideo = 'Times are of the finished video, by the places of the clips below.'
export const timesFromSlate =
  'Times count from the first slate. Give the clips their places in the video below, and they are the video’s own.'
export const chaptersWebvtt = 'Chapters, WebVTT'
export const captionsOfFacts = 'Captions of facts'
export const takesCsv = 'Takes, CSV'
export const noTakeNorPlace = 'No take was logged, and no clip has its place in the video.'

// shoots/edit-day.ts
export const knownAre = (clips: string) => `Known are ${clips}.`
export const clipsFirst = 'Write the clips on the page For the edit first; they are placed by the day’s log.'
