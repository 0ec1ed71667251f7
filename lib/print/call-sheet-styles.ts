import { StyleSheet } from '@react-pdf/renderer'
import { CONDENSED, FIGURES, SANS, SERIF } from './fonts'

/** Points. */
export const MARGIN = { side: 33, top: 24, bottom: 36 }
/** The least lettering on a sheet, pt. */
export const LEAST = 9

/** `d` is how dense the sheet is set: 1, or a little less where that keeps it on one page. */
export const stylesOf = (d: number) =>
  StyleSheet.create({
    page: {
      paddingTop: MARGIN.top,
      paddingBottom: MARGIN.bottom,
      paddingHorizontal: MARGIN.side,
      fontFamily: SANS,
      fontSize: Math.max(LEAST, 9.6 * d),
      lineHeight: d < 1 ? 1.2 : 1.28,
      color: '#000000',
      fontFeatureSettings: FIGURES,
    },
    head: {
      flexDirection: 'row',
      justifyContent: 'space-between',
      alignItems: 'flex-end',
      borderBottom: '3 solid #000000',
      paddingBottom: 3 * d,
      marginBottom: 7 * d,
    },
    title: { fontFamily: SERIF, fontWeight: 600, fontSize: 22 * d, lineHeight: 1.15 },
    small: { fontSize: Math.max(LEAST, 9.4 * d), color: '#333333' },
    bold: { fontWeight: 700 },
    facts: {
      flexDirection: 'row',
      gap: 14,
      borderBottom: '0.9 solid #000000',
      paddingBottom: 6 * d,
      marginBottom: 6 * d,
    },
    call: { fontFamily: CONDENSED, fontWeight: 800, fontSize: 32 * d, lineHeight: 1 },
    h2: {
      fontFamily: SERIF,
      fontWeight: 600,
      fontSize: 13 * d,
      lineHeight: 1.2,
      marginTop: 7 * d,
      marginBottom: 2 * d,
    },
    h3: { fontWeight: 700, fontSize: 10.5 * d, marginBottom: 1 * d },
    th: { color: '#333333', fontWeight: 500, fontSize: Math.max(LEAST, 9.4 * d) },
    row: {
      flexDirection: 'row',
      alignItems: 'center',
      borderBottom: '0.6 solid #BDBDBD',
      paddingVertical: d < 0.85 ? 0.8 : 1.6 * d,
    },
    time: { fontFamily: CONDENSED, fontWeight: 800, fontSize: 11.2 * d, lineHeight: 1.1 },
    figure: { fontFamily: CONDENSED, fontWeight: 500 },
    foot: {
      position: 'absolute',
      left: MARGIN.side,
      right: MARGIN.side,
      flexDirection: 'row',
      justifyContent: 'space-between',
      borderTop: '0.9 solid #000000',
      paddingTop: 3,
      fontSize: LEAST,
    },
  })
export type Styles = ReturnType<typeof stylesOf>
