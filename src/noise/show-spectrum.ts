import { bandEdges } from '../../dsp/level/bands';
import { octaveBands } from '../../dsp/noise/octave-bands';
import { powerToDb } from '../../dsp/level/decibels';
import type { PowerSpectrum } from '../../dsp/response/power-spectrum';
import { microphoneGainDb } from '../../dsp/response/microphone-correction';
import type { MicrophoneCalibration } from '../microphone/calibration';
import type { NoiseSetting } from './noise-orders';
import type { NoiseRequest, NoiseSpectrum } from './noise-state';

/** Mean squares per bin at the microphone. */
export interface HeardSpectra {
  /** The noise with everything that is heard beside it. */
  readonly whole: PowerSpectrum;
  /** What is heard beside it; null while unknown. */
  readonly hiss: PowerSpectrum | null;
  /** Whether the ratio of the two is a coherence. */
  readonly coherent: boolean;
}

/** Levels of the request's bands, the microphone's own response taken out. */
export function showSpectrum(
  heard: HeardSpectra,
  { bandsPerOctave, lowHz, highHz }: NoiseRequest,
  { calibration, soundLevel }: NoiseSetting,
): NoiseSpectrum {
  const bands = (spectrum: PowerSpectrum) => octaveBands(spectrum, bandsPerOctave, lowHz, highHz);
  const whole = bands(heard.whole);
  const hiss = heard.hiss && bands(heard.hiss);
  // A band that the noise fills in part reads as if it filled it.
  const filled = Array.from(whole.hz, (hz) => {
    if (!heard.coherent) return 1;
    const [low, high] = bandEdges(hz, bandsPerOctave);
    return Math.log(Math.min(high, highHz) / Math.max(low, lowHz)) / Math.log(high / low);
  });
  const offsets = Array.from(whole.hz, (hz) => {
    return (soundLevel?.offsetDb ?? 0) - (calibration ? microphoneGainDb(calibration, hz) : 0);
  });
  const show = (power: number, band: number): number => {
    return Math.max(powerToDb(power / (filled[band] ?? 1)), -200) + (offsets[band] ?? 0);
  };
  return {
    hz: Array.from(whole.hz),
    db: Array.from(whole.power, show),
    noiseDb: Array.from(whole.hz, (_, band) => hiss && show(hiss.power[band] ?? 0, band)),
    coherence: Array.from(whole.power, (power, band) => {
      if (!hiss || !heard.coherent) return null;
      return power > 0 ? Math.min(Math.max(1 - (hiss.power[band] ?? 0) / power, 0), 1) : 0;
    }),
    unit: soundLevel ? 'dB SPL' : 'dBFS',
  };
}

/** A spectrum with the microphone's response divided out of it. */
export function withoutMicrophone(
  spectrum: PowerSpectrum,
  calibration: MicrophoneCalibration | null,
): PowerSpectrum {
  if (!calibration) return spectrum;
  const power = spectrum.power.map((value, k) => {
    return value === 0
      ? 0
      : value * 10 ** (-microphoneGainDb(calibration, k * spectrum.hzPerBin) / 10);
  });
  return { ...spectrum, power };
}
