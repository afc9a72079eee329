import type { TakeEnding } from './take-ending';

/** Keeps the screen awake until the take is over; without that ability the take goes on. */
export async function holdWakeLock(ending: TakeEnding): Promise<void> {
  if (!('wakeLock' in navigator)) return;
  try {
    const lock = await navigator.wakeLock.request('screen');
    ending.atEnd(() => void lock.release());
  } catch {
    // Refused on a low battery or by the system's settings: the screen may dim, no more.
  }
}
