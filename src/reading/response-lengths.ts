import { harmonicLeadSeconds } from '../../dsp/distortion/harmonic-windows';
import type { SweepSpec } from '../../dsp/signal/sweep';

/** Response before zero delay: room for nearer speakers than the reference, and for noise. */
const preSeconds = 0.17;
/** Response after zero delay. */
const postSeconds = 1.36;
/** A speaker may arrive so long before zero delay and still have its harmonics read. */
const earlySeconds = 0.05;

/** Shorter sweeps leave harmonics under the decay of a room, seconds. */
export const leastSweepSeconds = 2;

/** Samples of a response before its zero delay, and of the whole of it. */
export function responseLengths(sampleRate: number): { pre: number; whole: number } {
  const pre = Math.round(preSeconds * sampleRate);
  return { pre, whole: pre + Math.round(postSeconds * sampleRate) };
}

/** Seconds of a response before its zero delay that hold its harmonics too; 0 when none are read. */
export function harmonicSeconds(sweep: SweepSpec): number {
  return sweep.lengthSamples / sweep.sampleRate < leastSweepSeconds
    ? 0
    : harmonicLeadSeconds(sweep) + earlySeconds;
}
