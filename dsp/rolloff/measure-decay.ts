import { nextPowerOfTwo, realSignal, type HalfSpectrum } from '../fft/fft';

/** Band of the decay, Hz: nothing below the first, all from the second to the third. */
const BAND_HZ = [170, 190, 500, 530] as const;
const FROM_DB = -5;
const TO_DB = -20;
/** Noise above this share of the energy hides the decay. */
const MOST_NOISE = 0.03;
const LEAD_SECONDS = 0.01;

/**
 * Time in which the band from 180 to 500 Hz decays by 60 dB, from −5 to −20 dB of the backward
 * integral. `spectrum` has lines `lineHz` apart and at least up to 530 Hz; the response fills the
 * first `seconds` of its time. `noiseShare` of the band's energy is steady noise and taken off.
 * Null when noise or the end of the response comes first. Schroeder, JASA 1965; ISO 3382 (ranges).
 */
export function measureDecay(
  spectrum: HalfSpectrum,
  lineHz: number,
  seconds: number,
  noiseShare: number,
): number | null {
  if (!(noiseShare <= MOST_NOISE)) return null;
  const size = nextPowerOfTwo((2 * BAND_HZ[3]) / lineHz);
  const band = new Float64Array(size + 2);
  for (let k = 0; k <= size / 2; k++) {
    const gain = gainAt(k * lineHz);
    band[2 * k] = gain * (spectrum[2 * k] ?? 0);
    band[2 * k + 1] = gain * (spectrum[2 * k + 1] ?? 0);
  }
  const samples = realSignal(band, size);
  const rate = size * lineHz;
  const end = Math.min(size, Math.floor(seconds * rate));
  let total = 0;
  let peak = 0;
  for (let n = 0; n < end; n++) {
    const energy = (samples[n] ?? 0) ** 2;
    total += energy;
    if (energy > (samples[peak] ?? 0) ** 2) peak = n;
  }
  const start = Math.max(0, peak - Math.round(LEAD_SECONDS * rate));
  return decayAfter(samples.subarray(start, end), rate, (noiseShare * total) / end);
}

/** `noise`: energy per sample that belongs to steady noise. */
function decayAfter(samples: Float64Array, rate: number, noise: number): number | null {
  const remaining = new Float64Array(samples.length + 1);
  for (let n = samples.length - 1; n >= 0; n--) {
    remaining[n] = (remaining[n + 1] ?? 0) + (samples[n] ?? 0) ** 2 - noise;
  }
  const whole = remaining[0] ?? 0;
  const fallTo = (db: number): number =>
    remaining.findIndex((energy) => energy < whole * 10 ** (db / 10));
  const [from, to] = [fallTo(FROM_DB), fallTo(TO_DB)];
  // The integral ends at 0 by construction: a fall in its last tenth says nothing.
  if (from < 0 || to <= from || to > 0.9 * samples.length) return null;
  return ((to - from) / rate) * (60 / (FROM_DB - TO_DB));
}

function gainAt(hz: number): number {
  const [zeroBelow, fullFrom, fullTo, zeroAbove] = BAND_HZ;
  if (hz <= zeroBelow || hz >= zeroAbove) return 0;
  if (hz < fullFrom) return (hz - zeroBelow) / (fullFrom - zeroBelow);
  return hz > fullTo ? (zeroAbove - hz) / (zeroAbove - fullTo) : 1;
}
