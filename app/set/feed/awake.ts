/** Keeps the screen lit while the page is looked at, where the browser can. Returns how to let it sleep. */
export function keepAwake(): () => void {
  let lock: WakeLockSentinel | null = null
  let over = false
  const hold = async () => {
    if (over || document.visibilityState !== 'visible') return
    const held = await navigator.wakeLock?.request('screen').catch(() => null)
    if (over) void held?.release()
    else lock = held ?? null
  }
  // A page that was hidden has lost it.
  const again = () => void hold()
  document.addEventListener('visibilitychange', again)
  void hold()
  return () => {
    over = true
    document.removeEventListener('visibilitychange', again)
    void lock?.release()
  }
}
