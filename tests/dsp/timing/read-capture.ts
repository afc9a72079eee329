import { estimateClock } from '../../../dsp/timing/estimate-clock';
import { findMarks } from '../../../dsp/timing/find-marks';
import { captureTake, makeRoom, type CaptureOptions, type SyntheticTake } from './synthetic-take';

/** Responses of the speakers of a take; all but the first are twice as loud. */
export function roomsOf(count: number, t60 = 0.4, directDb = 0): Float64Array[] {
  return Array.from({ length: count }, (_, k) =>
    makeRoom({
      delaySeconds: 0.004 + (0.05 * k) / count,
      t60,
      directDb,
      seed: 30 + k,
      gain: k === 0 ? 1 : 2,
    }),
  );
}

/** Captures a take and reads its marks and its clock. */
export function read(
  take: SyntheticTake,
  options: CaptureOptions,
  rooms: readonly (Float64Array | null)[] = roomsOf(take.sweepStarts.length),
) {
  const capture = captureTake(take, rooms, options);
  const finding = findMarks(capture, options.rate ?? take.rate, take.mark, take.markStarts);
  if (!finding) throw new Error('no marks were found');
  return { finding, clock: estimateClock(finding, take.markStarts) };
}
