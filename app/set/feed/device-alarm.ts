import type { SoundAlert } from '../set-feed'
import type { Alarm } from './alerts-here'
import { showNotification } from './notify'
import { Sound } from './sound'
import { TONES } from './tones'

const TITLES = { standby: 'Standby', roll: 'Roll', trouble: 'Look to it' } as const

/** Sound, shaking and the system's own notification, each where the alert asks for it and the device has it. */
export class DeviceAlarm implements Alarm {
  readonly tones = new Sound()

  sound({ tone, channels, action, key }: SoundAlert): void {
    if (channels.includes('sound')) this.tones.play(tone)
    if (channels.includes('vibration')) this.shake(tone)
    if (document.visibilityState !== 'visible') showNotification(TITLES[tone], action, key, channels.includes('sound'))
  }
  notify(sentence: string): void {
    if (document.visibilityState !== 'visible') showNotification('Emberslate', sentence, sentence, false)
  }
  hush(): void {
    this.tones.hush()
  }
  shake(tone: SoundAlert['tone']): void {
    navigator.vibrate?.([...TONES[tone].shake])
  }

  /** A reload takes the sound away until somebody taps; any tap will do. Returns how to stop waiting for it. */
  unlockOnTap(): () => void {
    const unlock = () => void this.tones.unlock().then((open) => open && stop())
    const stop = () => document.removeEventListener('pointerup', unlock)
    document.addEventListener('pointerup', unlock)
    return stop
  }
}

/** One for the page: the feed and the sound check share its sound. */
export const DEVICE_ALARM = new DeviceAlarm()
