import { Text, type TextProps } from '@react-pdf/renderer'
import type { PropsWithChildren } from 'react'
import { tied } from '../export/tied'
import { asSet } from '../plan/printable'

/** The printer's infinity: a break at this price is never made. */
const NEVER = 10_000

/**
 * Text whose words are never broken. A letter of the extended Latin face ("š") makes a word of several pieces, between
 * which the printer would end the line with a hyphen that the face does not have. A number keeps its unit beside it.
 */
export const Words = ({ children, ...props }: PropsWithChildren<TextProps>) => (
  <Text hyphenationPenalty={NEVER} {...props}>
    {typeof children === 'string' ? asSet(tied(children)) : children}
  </Text>
)
