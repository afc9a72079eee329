import { readRolloffClose } from './read-rolloff-close';
import { bassBands } from './kept-bass';
import { readRolloffTogether } from './read-rolloff-together';
import type { RolloffFinding } from './rolloff-finding';
import type { TogetherOrder } from './rolloff-together';

/** Reads an order; takes tens of milliseconds. RangeError when nothing was heard. */
export function readOrder({ heard, isSub, sheetF3Hz, close }: TogetherOrder): RolloffFinding {
  if (close) return readRolloffClose(close, isSub, sheetF3Hz);
  const atSeats = heard.map(({ channel, bass }) => ({ channel, bands: bassBands(bass) }));
  return readRolloffTogether(atSeats, isSub, sheetF3Hz);
}
