import { deconvolveSweep } from '../../dsp/response/deconvolve';
import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import type { ScheduledSegment } from '../take/schedule';
import { responseLengths } from './response-lengths';
import { silenceOf, type ResponderGround } from './shared-sound';

/** A take's silence as the response of a segment, at the power the noise has in it. */
export function noiseResponse(
  ground: ResponderGround,
  segment: ScheduledSegment,
  asHeard: boolean,
): ImpulseResponse | null {
  const silence = silenceOf(ground, asHeard);
  if (silence === null) return null;
  const { sampleRate } = ground.schedule;
  const stretch = asHeard ? ground.clock.ratio : 1;
  const { pre, whole } = responseLengths(sampleRate * stretch);
  const length = Math.ceil((segment.end - segment.sweepStart) * stretch) + pre;
  const end = silence.subarray(Math.max(0, silence.length - length));
  const heard = new Float64Array(length);
  for (let n = 0; n < length; n++) heard[n] = end[n % end.length] ?? 0;
  const sweep = { ...segment.sweep, sampleRate };
  return deconvolveSweep(heard, pre, sweep, { preSamples: pre, lengthSamples: whole, stretch });
}
