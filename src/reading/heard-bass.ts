import type { Transfer } from '../../dsp/bass/transfer';
import type { ChannelReading } from './reading';

/**
 * The kept bass of a channel for arithmetic, on bassGrid(); null where it was not read, or is
 * silence at some frequency, which no speaker is.
 */
export function heardBass(
  reading: Pick<ChannelReading, 'bass'> | null | undefined,
): Transfer | null {
  const bass = reading?.bass;
  if (!bass?.re.every((value, k) => value !== 0 || bass.im[k] !== 0)) return null;
  return { re: Float64Array.from(bass.re), im: Float64Array.from(bass.im) };
}
