import type { ReactNode } from 'react'
import { iconNames } from '../words/icons'

export type IconName = keyof typeof iconNames

const [LINE, BOLD] = [1.25, 2.25]
const HEIGHT = 24

const stroke = (d: string) => <path key={d} d={d} fill="none" stroke="var(--ink)" strokeWidth={BOLD} />
const shot = (dash: string | undefined, fill: string) => (
  <rect x="2" y="5" width="28" height="14" fill={fill} stroke="var(--cool)" strokeWidth={LINE} strokeDasharray={dash} />
)
/** The same shapes that the heat line draws, so that a key beside it can say what they mean. */
const DRAWN: Record<IconName, { readonly width: number; readonly marks: ReactNode }> = {
  tick: { width: 20, marks: stroke('M2 12l5 6L18 4') },
  'tick-with-care': { width: 20, marks: [stroke('M3 9l5 6L18 2'), stroke('M2 21h3M8 21h3M14 21h3')] },
  crossed: { width: 20, marks: stroke('M4 4l13 15M17 4L4 19') },
  unchecked: { width: 20, marks: stroke('M2 12h3M8.5 12h3M15 12h3') },
  moment: {
    width: 20,
    marks: (
      <g fill="var(--paper)" stroke="var(--ember)">
        <line x1="10" x2="10" y1="0" y2="14" strokeWidth={LINE} />
        <circle cx="10" cy="18" r="4" strokeWidth={BOLD} />
      </g>
    ),
  },
  window: {
    width: 32,
    marks: (
      <g fill="var(--ember)">
        <rect x="0" y="10.25" width="32" height="3.5" />
        <rect x="15" y="6" width={BOLD} height="12" />
      </g>
    ),
  },
  happened: { width: 20, marks: <circle cx="10" cy="12" r="4.5" fill="var(--ink)" /> },
  'what-if': {
    width: 20,
    marks: <path d="M10 6l6 6-6 6-6-6z" fill="var(--paper)" stroke="var(--ember)" strokeWidth={BOLD} />,
  },
  'shot-fixed': { width: 32, marks: shot(undefined, 'var(--cool)') },
  'shot-free': { width: 32, marks: shot(undefined, 'none') },
  'shot-tentative': { width: 32, marks: shot('4 3', 'none') },
}

/**
 * Our own signs, only where a word would not do. Silent where a word beside it says the same (`spoken` false), for the
 * fonts have none of them.
 */
export function Icon({ name, spoken = false }: { readonly name: IconName; readonly spoken?: boolean }) {
  const { width, marks } = DRAWN[name]
  return (
    <svg
      className="icon"
      width={width}
      height={HEIGHT}
      viewBox={`0 0 ${width} ${HEIGHT}`}
      role={spoken ? 'img' : undefined}
      aria-label={spoken ? iconNames[name] : undefined}
      aria-hidden={!spoken}
    >
      {marks}
    </svg>
  )
}
