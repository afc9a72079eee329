import { captureSample, type Clock } from './clock';
import { resampleToStimulus } from './resample';
import type { Samples } from '../signal/samples';

/** A stretch on the stimulus clock whose two halves come from before and after a fault. */
export interface RepairedStretch {
  readonly samples: Float64Array;
  /** Entries that were lost and hold zeros, [from, to); empty when audio was repeated. */
  readonly missing: readonly [number, number];
}

/** The halves fade into silence over so many samples beside what is missing. */
const fadeSamples = 16;

/**
 * Segment `index` around the place of its lost or repeated audio, on the stimulus clock: up to
 * `atSample` of the capture by the opening mark, after it by the closing one. Lost samples are
 * zeros, repeated ones are left out, so that both halves of the sweep stand where they belong; what
 * stays wrong is the response at the frequencies that the sweep passed in the missing stretch, and
 * a few tens of samples around the joint. Stretch as in resampleToStimulus. Throws RangeError when
 * the segment has no closing mark.
 */
export function repairSegment(
  capture: Samples,
  clock: Clock,
  index: number,
  atSample: number,
  startSample: number,
  lengthSamples: number,
): RepairedStretch {
  const before = resampleToStimulus(capture, clock, index, startSample, lengthSamples);
  const after = resampleToStimulus(capture, clock, index + 1, startSample, lengthSamples);
  const origin = captureSample(clock, index, startSample);
  const next = captureSample(clock, index + 1, startSample);
  const joint = Math.round((atSample - origin) / clock.ratio);
  const resume = Math.max(joint, Math.round((atSample - next) / clock.ratio));
  return joinHalves(before, after, joint, resume);
}

/** `before` up to the entry `joint`, then zeros, then `after` from the entry `resume` on. */
export function joinHalves(
  before: Float64Array,
  after: Float64Array,
  joint: number,
  resume: number,
): RepairedStretch {
  const length = before.length;
  const end = Math.min(Math.max(joint, 0), length);
  const start = Math.min(Math.max(resume, end), length);
  const samples = new Float64Array(length);
  samples.set(before.subarray(0, end));
  samples.set(after.subarray(start), start);
  if (start > end) {
    for (let n = 0; n < fadeSamples; n++) {
      const gain = 0.5 * (1 - Math.cos((Math.PI * (n + 0.5)) / fadeSamples));
      if (end - 1 - n >= 0) samples[end - 1 - n] = gain * (samples[end - 1 - n] ?? 0);
      if (start + n < length) samples[start + n] = gain * (samples[start + n] ?? 0);
    }
  }
  return { samples, missing: [end, start] };
}
