import { View } from '@react-pdf/renderer'
import { Words } from './words'

/** A line to write on by hand. */
export function Blank({ label }: { readonly label: string }) {
  return (
    <View style={{ flexDirection: 'row', alignItems: 'flex-end', gap: 4 }}>
      <Words>{label || ' '}</Words>
      <View style={{ flex: 1, borderBottom: '0.8 solid #000000', marginBottom: 2 }} />
    </View>
  )
}
