import { delaySeconds, type ImpulseResponse } from '../response/impulse-response';
import { largestIndex } from '../timing/envelope-peak';

/**
 * The arrival given, s after zero delay, or that of the largest sample. Throws RangeError for one
 * outside the response or an empty response.
 */
export function checkedArrival(ir: ImpulseResponse, seconds?: number): number {
  const { samples, sampleRate, zeroIndex } = ir;
  if (samples.length === 0) throw new RangeError('a response must hold samples, got 0');
  if (seconds === undefined) return delaySeconds(ir, largestIndex(samples));
  const index = zeroIndex + seconds * sampleRate;
  if (!(index >= 0 && index < samples.length)) {
    throw new RangeError(`arrivalSeconds must lie in the response, got ${seconds}`);
  }
  return seconds;
}
