import { layoutFromName } from '../../../src/system/layout';
import { scheduleTake } from '../../../src/take/schedule-take';
import type { Schedule } from '../../../src/take/schedule';
import { isTrouble } from '../../../src/trouble';

/** A take of a named layout with short sweeps. */
export function shortTakeOf(name: string, sampleRate = 48000): Schedule {
  const layout = layoutFromName(name);
  if (isTrouble(layout)) throw new RangeError(layout.sentence);
  return scheduleTake(layout, { sweepSeconds: 0.5, sampleRate });
}

/** A take of 2.1, about 13 s. */
export const shortTake = shortTakeOf('2.1');
