import type { ImpulseResponse } from '../response/impulse-response';
import { powerSpectrum } from '../response/power-spectrum';
import { smoothPower } from '../response/smoothing';
import { transformResponse } from './band-envelope';
import { checkedArrival } from './checked-arrival';
import { blurSeconds, fractionWidthHz, gaussianEnvelope, gaussianPower } from './gaussian-band';
import { fitModeDecay, type ModeDecay } from './mode-decay';
import { spectralPeaks } from './spectral-peaks';
import { tailPower } from './tail-power';

export interface ModesOptions {
  /** Steady noise that went through the same deconvolution; null: the response's own end tells. */
  readonly noise: ImpulseResponse | null;
  /** When the sound arrives, s after zero delay; left out: the largest sample. */
  readonly arrivalSeconds?: number;
  /** Modes are looked for from here, Hz; default 20. */
  readonly fromHz?: number;
  /** Up to here, Hz: the Schroeder frequency, above which modes overlap. */
  readonly toHz: number;
}

/** A peak of the response below the Schroeder frequency, and how it rings out. */
export interface Mode extends ModeDecay {
  readonly hz: number;
  /** Level re the strongest peak, dB. */
  readonly levelDb: number;
}

const spacingHz = 0.25;
const leastProminenceDb = 3;
/** A peak counts when it stands so far over the noise, and no farther below the strongest, dB. */
const overNoiseDb = 10;
const deepestDb = 40;
/** The filter's width: this share of the way to the next peak, and no more than 1/3 octave. */
const shareOfGap = 0.7;
const widestFraction = 3;

/**
 * Peaks of the response between fromHz and toHz that stand 3 dB over the valleys around them, and
 * the time in which each rings out by 60 dB, or a sentence why it cannot be told. Each is heard
 * through a Gaussian filter no wider than 0.7 of the way to the next peak. A mode that another one
 * covers makes no peak and is not told. Throws RangeError unless 0 < fromHz < toHz.
 */
export function readModes(ir: ImpulseResponse, options: ModesOptions): readonly Mode[] {
  const { noise, fromHz = 20, toHz } = options;
  if (!(fromHz > 0 && fromHz < toHz)) {
    throw new RangeError(`modes need 0 < fromHz < toHz, got ${fromHz}, ${toHz}`);
  }
  const arrival = checkedArrival(ir, options.arrivalSeconds);
  const heardHz = [fromHz, Math.min(toHz, ir.sampleRate / 2)] as const;
  const found = spectralPeaks(powerSpectrum(ir, spacingHz), heardHz, leastProminenceDb);
  const strongest = Math.max(...found.map(({ db }) => db));
  const quiet = noise && powerSpectrum(noise, spacingHz);
  const peaks = found.filter(({ hz, db }) => {
    const hiss = quiet ? (smoothPower(quiet, [hz], widestFraction)[0] ?? 0) : 0;
    const clear = !(hiss > 0) || db > 10 * Math.log10(hiss) + overNoiseDb;
    return clear && db > strongest - deepestDb;
  });
  const widths = peaks.map(({ hz }, n) => {
    const below = hz - (peaks[n - 1]?.hz ?? -Infinity);
    const above = (peaks[n + 1]?.hz ?? Infinity) - hz;
    return Math.min(fractionWidthHz(hz, widestFraction), shareOfGap * Math.min(below, above));
  });
  const padding = 2 * blurSeconds(Math.min(...widths, 1));
  const heard = transformResponse(ir, padding);
  const hiss = noise && transformResponse(noise, padding);
  return peaks.map(({ hz, db }, n) => {
    const width = widths[n] ?? 1;
    const envelope = gaussianEnvelope(heard, hz, width);
    const floor = hiss ? gaussianPower(hiss, hz, width) : tailPower(envelope, blurSeconds(width));
    const decay = fitModeDecay(envelope, floor, arrival, width, `${hz.toFixed(1)} Hz`);
    return { hz, levelDb: db - strongest, ...decay };
  });
}
