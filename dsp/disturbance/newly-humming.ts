import { sweepTimeSeconds } from '../signal/sweep';
import type { DisturbanceInput } from './disturbance';
import { findMainsLines } from './mains-lines';

/** The hum is listened for once the sweep has passed this and the room has had some time. */
const passedHz = 250;
const decaySeconds = 0.4;
const leastSeconds = 1;
/** Power over that of the silence's own hum from which on it is new. */
const newFrom = 4;

/** Whether mains hum came on that the take's silence does not hold. */
export function isNewlyHumming({ heard, sweepAt, sweep, silence }: DisturbanceInput): boolean {
  const rate = sweep.sampleRate;
  const passed = sweepTimeSeconds(sweep, Math.min(passedHz, sweep.endHz)) + decaySeconds;
  const from = Math.min(sweepAt + passed * rate, heard.length - leastSeconds * rate);
  const found = findMainsLines(heard, rate, Math.max(0, Math.round(from)));
  if (!found) return false;
  const before = silence ? findMainsLines(silence, rate) : null;
  if (before?.mainsHz !== found.mainsHz) return true;
  return 10 ** ((found.levelDb - before.levelDb) / 10) > newFrom;
}
