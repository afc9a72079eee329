import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import { powerSpectrum, type PowerSpectrum } from '../../dsp/response/power-spectrum';
import { divisibleHz, takeOutOfSpectrum } from './take-out-filter';
import type { ChannelInForce } from './take-out-settings';

/** Power of a channel's response, or of its noise, with the crossover in force divided out. */
export function spectrumWithout({ filter }: ChannelInForce, ir: ImpulseResponse): PowerSpectrum {
  const spectrum = powerSpectrum(ir);
  return filter ? takeOutOfSpectrum(spectrum, filter.spec, divisibleHz(filter)) : spectrum;
}
