import { deconvolveSweep } from '../../dsp/response/deconvolve';
import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import { fadeEnds } from '../../dsp/signal/fade';
import type { SweepSpec } from '../../dsp/signal/sweep';
import { harmonicSeconds, responseLengths } from './response-lengths';

/** The start of a response fades in over this, as its deconvolution fades it. */
const edgeSeconds = 0.002;

/** Samples that audio of a sweep must reach before its start. */
export function heardBefore(sweep: SweepSpec, sampleRate: number): number {
  const { pre } = responseLengths(sampleRate);
  return Math.max(pre, Math.ceil(harmonicSeconds(sweep) * sampleRate));
}

/**
 * Impulse response of a sweep that stands alone at `startIndex` of `heard`, and the same from before
 * its harmonics on, null where none are read: one deconvolution for both.
 */
export function respondWithHarmonics(
  heard: Float64Array,
  startIndex: number,
  sweep: SweepSpec,
  stretch = 1,
): { readonly ir: ImpulseResponse; readonly long: ImpulseResponse | null } {
  const rate = sweep.sampleRate * stretch;
  const { pre, whole } = responseLengths(rate);
  const before = heardBefore(sweep, rate);
  const long = deconvolveSweep(heard, startIndex, sweep, {
    preSamples: before,
    lengthSamples: before + whole - pre,
    stretch,
  });
  if (before === pre) return { ir: long, long: null };
  const samples = long.samples.slice(before - pre);
  fadeEnds(samples, Math.round(edgeSeconds * sweep.sampleRate), 0);
  return { ir: { ...long, samples, zeroIndex: pre }, long };
}
