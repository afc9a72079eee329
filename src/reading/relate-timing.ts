import { msg } from '@lit/localize';
import type { ArrivalFinding } from './read-arrival';
import type { ReadingFrame } from './reading-frame';
import { untimed, type Timing } from './untimed';

/** An arrival relative to the reference speaker's, and the distance it means. */
export function relateTiming(
  { arrival, ceilingSeconds }: ArrivalFinding,
  { reference, departure, referenceDistanceMetres, metresPerSecond }: ReadingFrame,
): { readonly numbers: Timing; readonly notes: readonly string[] } {
  if (!arrival) return { numbers: untimed, notes: [] };
  const zero = departure ?? reference;
  if (!zero) {
    const note = msg(
      'No distance: the arrival of the reference speaker could not be told. Repeat the take.',
    );
    return { numbers: untimed, notes: [note] };
  }
  const own = halfOf(arrival);
  const its = halfOf(zero);
  const isZero = arrival.seconds === zero.seconds;
  const half = isZero ? 0 : Math.hypot(own, its);
  const zeroMetres = departure ? 0 : referenceDistanceMetres;
  const metres = (seconds: number): number =>
    zeroMetres + metresPerSecond * (seconds - zero.seconds);
  const distances = {
    distanceMetres: metres(arrival.seconds),
    distanceInterval: [metres(arrival.seconds - half), metres(arrival.seconds + half)],
    ceilingPathMetres: ceilingSeconds === null ? null : metres(ceilingSeconds),
  } as const;
  if (!reference) {
    const note = msg(
      'No arrival beside the reference speaker: its own could not be told. Repeat the take.',
    );
    return { numbers: { ...untimed, ...distances }, notes: [note] };
  }
  const arrivalSeconds = arrival.seconds - reference.seconds;
  const apart = arrivalSeconds === 0 ? 0 : Math.hypot(own, halfOf(reference));
  return {
    numbers: {
      arrivalSeconds,
      arrivalInterval: [arrivalSeconds - apart, arrivalSeconds + apart],
      ...distances,
    },
    notes: [],
  };
}

function halfOf({ interval }: { readonly interval: readonly [number, number] }): number {
  return (interval[1] - interval[0]) / 2;
}
