import { Document, Page, View } from '@react-pdf/renderer'
import type { ReactNode } from 'react'
import { ls, titleStyle } from './list-styles'
import { NO_DATE, type PrintedDocument } from './render'
import { type Paper, SIZES } from './sheet'
import { Words } from './words'

interface Frame {
  readonly what: string
  readonly title: string
  readonly day: string
  readonly revision: string
  readonly paper: Paper
  readonly foot: string
  /** Points of the lettering. */
  readonly size?: number
  readonly children: ReactNode
}

/** Points from the paper's edge; from above, since the printer loses what stands from below on a list of several pages. */
const FOOT = 32

/** A list to be ticked by hand: head and foot stand on every page. */
export function listDocument({ what, title, day, revision, paper, foot, size, children }: Frame): PrintedDocument {
  const { width, height } = SIZES[paper]
  return (
    <Document
      title={`${what}: ${title}`}
      author="Emberslate"
      language="en"
      creationDate={NO_DATE}
      modificationDate={NO_DATE}
    >
      <Page size={[width, height]} style={size === undefined ? ls.page : { ...ls.page, fontSize: size }}>
        <View fixed style={ls.head}>
          <View style={{ flex: 1, paddingRight: 16 }}>
            <Words style={ls.small}>
              {what} · {day}
            </Words>
            <Words style={titleStyle(title)}>{title}</Words>
          </View>
          <Words style={[ls.bold, { width: 70, textAlign: 'right' }]}>{revision}</Words>
        </View>
        {children}
        <View fixed style={[ls.foot, { top: height - FOOT }]}>
          <Words>{foot}</Words>
          <Words
            render={({ pageNumber, totalPages }) => (totalPages > 1 ? `page ${pageNumber} of ${totalPages}` : '')}
          />
        </View>
      </Page>
    </Document>
  )
}

/** Never a title at the foot of a page without its list. */
export const ListTitle = ({ children }: { readonly children: ReactNode }) => (
  <View minPresenceAhead={50} wrap={false}>
    <Words style={ls.h2}>{children}</Words>
  </View>
)

/** A line with a box to tick. */
export const Ticked = ({ children }: { readonly children: ReactNode }) => (
  <View wrap={false} style={ls.row}>
    <View style={ls.box} />
    {children}
  </View>
)
