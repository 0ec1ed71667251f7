import { StyleSheet } from '@react-pdf/renderer'
import { CONDENSED, FIGURES, SANS, SERIF } from './fonts'

/** Points. Lists that are ticked by hand: large enough for a kitchen wall. */
export const ls = StyleSheet.create({
  page: {
    paddingTop: 28,
    paddingBottom: 40,
    paddingHorizontal: 36,
    fontFamily: SANS,
    fontSize: 10.2,
    lineHeight: 1.3,
    color: '#000000',
    fontFeatureSettings: FIGURES,
  },
  head: {
    flexDirection: 'row',
    justifyContent: 'space-between',
    alignItems: 'flex-end',
    borderBottom: '3 solid #000000',
    paddingBottom: 4,
    marginBottom: 8,
  },
  small: { fontSize: 9.4, color: '#333333' },
  bold: { fontWeight: 700 },
  h2: { fontFamily: SERIF, fontWeight: 600, fontSize: 13.5, lineHeight: 1.2, marginTop: 9, marginBottom: 3 },
  row: { flexDirection: 'row', gap: 8, borderBottom: '0.6 solid #BDBDBD', paddingVertical: 2 },
  th: { color: '#333333', fontWeight: 500, fontSize: 9.4 },
  time: { fontFamily: CONDENSED, fontWeight: 800, fontSize: 11.4, lineHeight: 1.15 },
  box: { width: 9, height: 9, border: '0.9 solid #000000', marginTop: 2.4, flexShrink: 0 },
  foot: {
    position: 'absolute',
    left: 36,
    right: 36,
    flexDirection: 'row',
    justifyContent: 'space-between',
    borderTop: '0.9 solid #000000',
    paddingTop: 3,
    fontSize: 9,
  },
})
const TITLE = 21
const LONG_TITLE = 44
export const titleStyle = (title: string) => ({
  fontFamily: SERIF,
  fontWeight: 600 as const,
  fontSize: title.length > LONG_TITLE ? TITLE * 0.72 : TITLE,
  lineHeight: 1.15,
})
