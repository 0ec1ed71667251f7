'use client'
import { useRouter } from 'next/navigation'
import type { UnitSystem } from '@/lib/units'
import { showCAndKilograms, showFAndPounds } from '../words/shared'

const A_YEAR_S = 365 * 86_400

/** Remembered in this browser. */
export function rememberUnits(units: UnitSystem) {
  // biome-ignore lint/suspicious/noDocumentCookie: the server draws with it, and the newer cookie store lacks on plain http
  document.cookie = `units=${units}; path=/; max-age=${A_YEAR_S}; samesite=lax`
}

/** Changes what is shown, never what was typed. */
export function UnitsButton({ units }: { units: UnitSystem }) {
  const router = useRouter()
  const other = units === 'metric' ? 'us' : 'metric'
  function change() {
    rememberUnits(other)
    router.refresh()
  }
  return (
    <button type="button" className="textlink" onClick={change}>
      {units === 'metric' ? showFAndPounds : showCAndKilograms}
    </button>
  )
}
