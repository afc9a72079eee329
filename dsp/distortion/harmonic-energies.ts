import type { ImpulseResponse } from '../response/impulse-response';
import { decimate } from '../disturbance/decimate';
import type { SweepSpec } from '../signal/sweep';
import {
  throughWindow,
  windowedEnergy,
  type BandEnergy,
  type NoiseEnergy,
  type NoiseSpectrum,
} from './band-energy';
import { harmonicEndHz } from './fundamental-grid';
import { harmonicWindows, linearWindow, type HarmonicWindow } from './harmonic-windows';
import { quarterTurn } from './quarter-turn';

/** One harmonic's energies by frequency: what is heard of it, of noise, of the linear response. */
export interface HarmonicEnergies {
  readonly window: HarmonicWindow;
  readonly heard: BandEnergy;
  readonly noise: NoiseEnergy;
  /** The linear response through the same window at its own arrival. */
  readonly own: BandEnergy;
  /** The linear response as late in the window as the tail of the order above is. */
  readonly tail: { readonly order: number; readonly energy: BandEnergy } | null;
}

export interface ResponseEnergies {
  readonly linear: BandEnergy;
  readonly linearNoise: NoiseEnergy;
  /** Orders 2 to 6. */
  readonly harmonics: readonly HarmonicEnergies[];
}

/** The linear response counts so long, seconds. */
const linearSeconds = 0.5;
/** Below this, Hz, bands are few bins wide: they are read from a thinned response, bins closer. */
const thinnedBelowHz = 700;
const thinnedRate = 3000;
const padding = { thinned: 3, whole: 1 } as const;

/** What energiesAt reads: below a frequency from a thinned response, above from the whole one. */
export interface SplitEnergies {
  readonly low: ResponseEnergies;
  readonly high: ResponseEnergies;
}

/** The energies that hold at a frequency. */
export function energiesAt({ low, high }: SplitEnergies, hz: number): ResponseEnergies {
  return hz < thinnedBelowHz ? low : high;
}

/**
 * Energies of the harmonics in a deconvolved sweep. Throws RangeError for a response
 * that begins after its harmonics.
 */
export function energiesFor(
  response: ImpulseResponse,
  sweep: SweepSpec,
  arrivalIndex: number,
  noise: NoiseSpectrum,
): SplitEnergies {
  const factor = Math.max(1, Math.floor(response.sampleRate / thinnedRate));
  // No window of the linear response ends later.
  const until = Math.ceil(arrivalIndex + linearSeconds * response.sampleRate);
  const used = { ...response, samples: response.samples.subarray(0, Math.max(until, 0)) };
  const low = readEnergies(thinned(used, factor), sweep, arrivalIndex / factor, noise, true);
  if (harmonicEndHz(sweep) < thinnedBelowHz) return { low, high: low };
  const high = readEnergies(response, sweep, arrivalIndex, noise, false);
  return { low, high };
}

/** Fewer samples of the same spectrum. */
function thinned({ samples, sampleRate, zeroIndex }: ImpulseResponse, factor: number) {
  const few = decimate(samples, factor);
  for (let n = 0; n < few.length; n++) few[n] = factor * (few[n] ?? 0);
  return {
    samples: few,
    sampleRate: sampleRate / factor,
    zeroIndex: zeroIndex / factor,
  };
}

function readEnergies(
  response: ImpulseResponse,
  sweep: SweepSpec,
  arrivalIndex: number,
  noise: NoiseSpectrum,
  isThinned: boolean,
): ResponseEnergies {
  const { samples, sampleRate } = response;
  const windows = harmonicWindows(sweep, sampleRate, arrivalIndex);
  const first = windows.at(-1)?.start ?? 0;
  if (!(first >= 0)) {
    throw new RangeError(`harmonics begin ${-first / sampleRate} s before the response does`);
  }
  const closer = isThinned ? padding.thinned : padding.whole;
  const length = Math.round(linearSeconds * sampleRate);
  const whole = linearWindow(sweep, sampleRate, arrivalIndex, length);
  const before = Math.max(...windows.map((window) => window.length));
  // As late as the tail of the third harmonic is heard in the window of the second.
  const early = linearWindow(sweep, sampleRate, arrivalIndex, Math.min(2 * before, length));
  const alone = new Float64Array(before + early.length);
  alone.set(throughWindow(samples, early, 0), before);
  // Windows begin many periods of the treble before an arrival: a turn moves nothing there.
  const turned = isThinned ? quarterTurn(alone) : alone;
  /** The linear response where a response of that order is in this window. */
  const asOrder = ({ order, start, lead }: HarmonicWindow, window: HarmonicWindow): BandEnergy => {
    const part = { ...response, samples: order % 2 === 0 ? turned : alone };
    return windowedEnergy(part, window, before + early.lead - (start + lead), closer);
  };
  return {
    linear: windowedEnergy(response, whole, 0, closer),
    linearNoise: { noise, window: whole },
    harmonics: windows.map((window, at) => {
      const above = windows[at + 1];
      return {
        window,
        heard: windowedEnergy(response, window, 0, closer),
        noise: { noise, window },
        own: asOrder(window, window),
        tail: above ? { order: above.order, energy: asOrder(above, window) } : null,
      };
    }),
  };
}
