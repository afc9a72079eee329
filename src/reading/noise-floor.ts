import { addSpectrum } from '../../dsp/fft/convolve';
import { powerToDb } from '../../dsp/level/decibels';
import { createRunningSpectrum } from '../../dsp/noise/running-spectrum';
import { octaveBands } from '../../dsp/noise/octave-bands';
import { microphoneGainDb } from '../../dsp/response/microphone-correction';
import type { PowerSpectrum } from '../../dsp/response/power-spectrum';
import type { MicrophoneCalibration } from '../microphone/calibration';
import type { TakeGround } from './read-one';
import { silenceOf } from './shared-sound';
import type { NoiseFloorReading } from './reading';
import type { Samples } from '../../dsp/signal/samples';

/** Octave bands from 31.5 Hz to 16 kHz, and how fine the spectrum under them is. */
const rangeHz = [31, 16_500] as const;
const leastBinHz = 3;
/** A stretch louder than the middle one by this factor is a bang, not the floor. */
const bangRatio = 2;

/**
 * The take's silence in octave bands, dB re full scale (rms), without the microphone's response;
 * bangs in it are left out. Null when the capture holds too little of it.
 */
export function readNoiseFloor(
  samples: Samples,
  sampleRate: number,
  { clock, schedule, shared }: Pick<TakeGround, 'clock' | 'schedule' | 'shared'>,
  calibration: MicrophoneCalibration | null,
): NoiseFloorReading | null {
  const { silences } = shared;
  const silence = silenceOf({ capture: samples, clock, schedule, silences }, true);
  const spectrum = silence && quietSpectrum(silence, sampleRate);
  if (!spectrum) return null;
  const own = calibration ? withoutMicrophone(spectrum, calibration) : spectrum;
  const topHz = Math.min(rangeHz[1], sampleRate / 2 / Math.SQRT2);
  const { hz, power } = octaveBands(own, 1, rangeHz[0], topHz);
  return { hz: Array.from(hz), db: Array.from(power, powerToDb) };
}

/** Mean of the spectra of stretches that are not much louder than the middle one. */
function quietSpectrum(silence: Float64Array, sampleRate: number): PowerSpectrum | null {
  const size = 2 ** Math.ceil(Math.log2(sampleRate / leastBinHz));
  const running = createRunningSpectrum(size, sampleRate);
  const heard: { readonly spectrum: PowerSpectrum; readonly power: number }[] = [];
  for (let from = 0; from + size <= silence.length; from += size / 2) {
    running.clear();
    running.push(silence.subarray(from, from + size));
    const spectrum = running.read();
    if (!spectrum) continue;
    heard.push({ spectrum, power: sumOf(spectrum.power) });
  }
  const middle = heard.toSorted((a, b) => a.power - b.power)[(heard.length - 1) >> 1];
  if (!middle) return null;
  const quiet = heard.filter(({ power }) => power <= bangRatio * middle.power);
  const power = new Float64Array(middle.spectrum.power.length);
  for (const { spectrum } of quiet) addSpectrum(power, spectrum.power);
  for (let k = 0; k < power.length; k++) power[k] = (power[k] ?? 0) / quiet.length;
  return { hzPerBin: middle.spectrum.hzPerBin, power };
}

function sumOf(values: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < values.length; k++) sum += values[k] ?? 0;
  return sum;
}

function withoutMicrophone(
  { hzPerBin, power }: PowerSpectrum,
  calibration: MicrophoneCalibration,
): PowerSpectrum {
  return {
    hzPerBin,
    power: power.map((one, k) => one * 10 ** (-microphoneGainDb(calibration, k * hzPerBin) / 10)),
  };
}
