import type { ChannelReading } from '../reading/reading';
import type { ProofInput, ProvedChannel } from './proof-case';

/** When a main is heard through the processor, beside the reference. */
export interface ProvedArrival {
  readonly seconds: number;
  /** Half width of its 90 % interval. */
  readonly half: number;
  /** Later than its settings say, beside the reference; null without readings before or distances. */
  readonly late: number | null;
}

/**
 * Arrival of the path that is useful, over the ceiling where both readings found one there; null
 * where it was not read.
 */
export function arrivalOf(
  { channel: { label }, before, after }: Pick<ProvedChannel, 'channel' | 'before' | 'after'>,
  { typed, after: { reference } }: Pick<ProofInput, 'typed' | 'after'>,
  metresPerSecond: number,
): ProvedArrival | null {
  if (!after) return null;
  const overCeiling =
    after.ceilingPathMetres !== null && (before === null || before.ceilingPathMetres !== null);
  const seconds = usefulSeconds(after, overCeiling, metresPerSecond);
  if (seconds === null || !after.arrivalInterval) return null;
  const [low, high] = after.arrivalInterval;
  const was = before && usefulSeconds(before, overCeiling, metresPerSecond);
  const [own, its] = [typed.distanceMetres[label], typed.distanceMetres[reference]];
  const late =
    was === null || own === undefined || its === undefined
      ? null
      : seconds - was - (its - own) / metresPerSecond;
  return { seconds, half: (high - low) / 2, late };
}

function usefulSeconds(
  { arrivalSeconds, distanceMetres, ceilingPathMetres }: ChannelReading,
  overCeiling: boolean,
  metresPerSecond: number,
): number | null {
  if (arrivalSeconds === null) return null;
  if (!overCeiling || ceilingPathMetres === null || distanceMetres === null) return arrivalSeconds;
  return arrivalSeconds + (ceilingPathMetres - distanceMetres) / metresPerSecond;
}
