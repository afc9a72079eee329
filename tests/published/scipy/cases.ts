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
  }
}
