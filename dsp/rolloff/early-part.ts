import { largestMagnitude } from '../level/largest';
import { nextPowerOfTwo, realSignal, realSpectrum, type HalfSpectrum } from '../fft/fft';

/** Windows e^(−t/τ) from the onset on that the early parts are seen through, τ in seconds. */
export const EARLY_SECONDS = [0.02, 0.08] as const;

/** Spectra of the early parts of a response, and what of steady noise they let through. */
export interface EarlyPart {
  /** One of EARLY_SECONDS. */
  readonly seconds: number;
  /** Lines as far apart as those of the whole response; true up to 530 Hz. */
  readonly spectrum: HalfSpectrum;
  /** Energy of the window, seconds: noise power here re noise power of a second. */
  readonly windowSeconds: number;
}

/** Full up to the first, nothing above the second, Hz. */
const BAND_HZ = [530, 1000] as const;
/** The onset is the first sample this large re the largest: reflections may be larger than it. */
const ONSET_SHARE = 0.3;
/** This long before the onset the window opens, to 1. */
const LEAD_SECONDS = 0.02;

/**
 * Looks at the first part of a response through windows e^(−t/τ). Under such a window a response
 * with the transfer function H(s) has H(jω + 1/τ): speaker and room still multiply, while the
 * room's modes lose their height. `spectrum` has lines `lineHz` apart and reaches 1 kHz or its own
 * end; the response fills the first `seconds` of its time.
 */
export function earlyParts(spectrum: HalfSpectrum, lineHz: number, seconds: number): EarlyPart[] {
  const size = nextPowerOfTwo((2 * BAND_HZ[1]) / lineHz);
  const band = new Float64Array(size + 2);
  for (let k = 0; k <= size / 2; k++) {
    const gain = gainAt(k * lineHz);
    band[2 * k] = gain * (spectrum[2 * k] ?? 0);
    band[2 * k + 1] = k === size / 2 ? 0 : gain * (spectrum[2 * k + 1] ?? 0);
  }
  const rate = size * lineHz;
  const samples = realSignal(band, size).subarray(0, Math.min(size, Math.floor(seconds * rate)));
  const onset = onsetOf(samples);
  const first = Math.max(0, onset - Math.round(LEAD_SECONDS * rate));
  return EARLY_SECONDS.map((tau) => {
    const seen = new Float64Array(size);
    let energy = 0;
    for (let n = first; n < samples.length; n++) {
      const gain = n < onset ? 1 : Math.exp(-(n - onset) / (tau * rate));
      seen[n] = gain * (samples[n] ?? 0);
      energy += gain * gain;
    }
    return { seconds: tau, spectrum: realSpectrum(seen, size), windowSeconds: energy / rate };
  });
}

function onsetOf(samples: Float64Array): number {
  const least = ONSET_SHARE * largestMagnitude(samples);
  let n = 0;
  while (n < samples.length && Math.abs(samples[n] ?? 0) < least) n++;
  return n < samples.length ? n : -1;
}

function gainAt(hz: number): number {
  const [full, none] = BAND_HZ;
  if (hz <= full) return 1;
  if (hz >= none) return 0;
  return 0.5 + 0.5 * Math.cos((Math.PI * (hz - full)) / (none - full));
}
