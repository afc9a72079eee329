import { transformResponse } from '../../../dsp/decay/band-envelope';
import { integrateDecay } from '../../../dsp/decay/decay-curve';
import { groupDelay } from '../../../dsp/decay/group-delay';
import { octaveEnvelope } from '../../../dsp/decay/octave-envelope';
import { octaveResponse } from '../../../dsp/decay/octave-filter';
import { convolve } from '../../../dsp/fft/convolve';
import { complexSpectrum, realSpectrum } from '../../../dsp/fft/fft';
import { filterResponse, type FilterSpec } from '../../../dsp/filter/analogue';
import { filterSamples, sectionsResponse } from '../../../dsp/filter/biquad';
import type { Complex } from '../../../dsp/filter/complex';
import { digitalSections } from '../../../dsp/filter/digital';
import { bandPower } from '../../../dsp/level/band-level';
import { deconvolveSweep } from '../../../dsp/response/deconvolve';
import { smoothPower } from '../../../dsp/response/smoothing';
import { markSignal, type MarkSpec } from '../../../dsp/signal/mark';
import { sweepSignal, type SweepSpec } from '../../../dsp/signal/sweep';

/** What each task is given; reference.py answers the same tasks with SciPy. */
export interface TaskInputs {
  'real spectrum': { signal: number[]; size: number };
  'complex spectrum': { signal: number[] };
  convolution: { a: number[]; b: number[] };
  sweep: SweepSpec;
  mark: MarkSpec;
  deconvolution: {
    captured: number[];
    startIndex: number;
    sweep: SweepSpec;
    preSamples: number;
    lengthSamples: number;
  };
  'analogue response': { filter: FilterSpec; hz: number[] };
  'digital response': { filter: FilterSpec; hz: number[]; sampleRate: number };
  filtering: { filter: FilterSpec; sampleRate: number; signal: number[] };
  smoothing: { power: number[]; hzPerBin: number; hz: number[]; fraction: number };
  'pink mean': { power: number[]; hzPerBin: number; lowHz: number; highHz: number };
  'octave response': { midHz: number; hz: number[] };
  'octave decay': { signal: number[]; sampleRate: number; midHz: number; from: number; to: number };
  'group delay': { filter: FilterSpec; hz: number[]; sampleRate: number };
}

export type Task = keyof TaskInputs;

/** One task with its input. */
export type Case = { [T in Task]: { readonly task: T; readonly input: TaskInputs[T] } }[Task];

const interleave = (values: readonly Complex[]): Float64Array =>
  Float64Array.from(values.flatMap(({ re, im }) => [re, im]));

/** The project's answer to a case, as one row of numbers. */
export function answerCase(c: Case): Float64Array {
  switch (c.task) {
    case 'real spectrum':
      return realSpectrum(c.input.signal, c.input.size);
    case 'complex spectrum':
      return complexSpectrum(Float64Array.from(c.input.signal));
    case 'convolution':
      return convolve(c.input.a, c.input.b);
    case 'sweep':
      return sweepSignal(c.input);
    case 'mark':
      return markSignal(c.input);
    case 'deconvolution': {
      const { captured, startIndex, sweep } = c.input;
      return deconvolveSweep(Float64Array.from(captured), startIndex, sweep, c.input).samples;
    }
    case 'analogue response':
      return interleave(c.input.hz.map((hz) => filterResponse(c.input.filter, hz)));
    case 'digital response': {
      const { filter, hz, sampleRate } = c.input;
      const sections = digitalSections(filter, sampleRate);
      return interleave(hz.map((each) => sectionsResponse(sections, each, sampleRate)));
    }
    case 'filtering': {
      const { filter, sampleRate, signal } = c.input;
      return filterSamples(signal, digitalSections(filter, sampleRate));
    }
    case 'smoothing': {
      const { power, hzPerBin, hz, fraction } = c.input;
      return smoothPower({ power: Float64Array.from(power), hzPerBin }, hz, fraction);
    }
    case 'pink mean': {
      const { power, hzPerBin, lowHz, highHz } = c.input;
      return Float64Array.of(
        bandPower({ power: Float64Array.from(power), hzPerBin }, lowHz, highHz),
      );
    }
    case 'octave response':
      return interleave(c.input.hz.map((hz) => octaveResponse(hz, c.input.midHz)));
    case 'octave decay':
      return decayOf(c.input);
    case 'group delay': {
      const { filter, hz, sampleRate } = c.input;
      const click = new Float64Array(sampleRate);
      click[0] = 1;
      const samples = filterSamples(click, digitalSections(filter, sampleRate));
      const delays = groupDelay({ samples, sampleRate, zeroIndex: 0 }, hz, { noise: null });
      return Float64Array.from(delays, (each) => each ?? NaN);
    }
  }
}

/** Energy still to come at 400 moments between two samples, without noise or what lies beyond. */
function decayOf(input: TaskInputs['octave decay']): Float64Array {
  const { signal, sampleRate, midHz, from, to } = input;
  const ir = { samples: Float64Array.from(signal), sampleRate, zeroIndex: 0 };
  const envelope = octaveEnvelope(transformResponse(ir, 0.1), midHz);
  const step = envelope.sampleRate / sampleRate;
  const end = { noise: 0, noiseError: 0, rate: 1, power: 0, reached: true };
  const curve = integrateDecay(envelope, from * step, from * step, { ...end, at: to * step });
  return curve?.remaining ?? new Float64Array(0);
}
