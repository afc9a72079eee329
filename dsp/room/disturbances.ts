import { gaussian, seededRandom } from '../signal/random';

/** Noises that spoil a measurement: a door slammed, a truck passing, mains hum, someone speaking. */
export type DisturbanceKind = 'bang' | 'rumble' | 'hum' | 'voice';

/**
 * Such a noise as a microphone hears it, peak 1; the same seed gives the same noise. A bang lasts
 * half a second, a rumble 3 s, hum 4 s, a voice 1.5 s. Invented, plausible spectra.
 */
export function disturbance(kind: DisturbanceKind, sampleRate: number, seed: number): Float64Array {
  const signal = makers[kind](sampleRate, seed);
  let peak = 0;
  for (const value of signal) peak = Math.max(peak, Math.abs(value));
  return signal.map((value) => value / peak);
}

type Maker = (sampleRate: number, seed: number) => Float64Array;

const makers: Readonly<Record<DisturbanceKind, Maker>> = { bang, rumble, hum, voice };

/** Most of a slam lies below 300 Hz; its click is broad. */
function bang(sampleRate: number, seed: number): Float64Array {
  const normal = gaussian(seededRandom(seed));
  const keep = Math.exp((-2 * Math.PI * 250) / sampleRate);
  let low = 0;
  return Float64Array.from({ length: Math.round(0.5 * sampleRate) }, (_, n) => {
    const seconds = n / sampleRate;
    const white = normal();
    low = keep * low + (1 - keep) * white;
    return 12 * low * Math.exp(-seconds / 0.07) + 0.4 * white * Math.exp(-seconds / 0.012);
  });
}

/** Noise around 40 Hz that swells and goes. */
function rumble(sampleRate: number, seed: number): Float64Array {
  const normal = gaussian(seededRandom(seed));
  const [once, again] = [resonator(35, 1.2, sampleRate), resonator(45, 1.2, sampleRate)];
  const length = Math.round(3 * sampleRate);
  return Float64Array.from({ length }, (_, n) => {
    return again(once(normal())) * Math.sin((Math.PI * n) / length) ** 2;
  });
}

/** 50 Hz and harmonics, on and off within a fifth of a second. */
function hum(sampleRate: number): Float64Array {
  const length = Math.round(4 * sampleRate);
  const harmonics = [1, 0.7, 0.5, 0.15, 0.3];
  return Float64Array.from({ length }, (_, n) => {
    const edge = Math.min(1, n / (0.2 * sampleRate), (length - n) / (0.2 * sampleRate));
    const phase = (2 * Math.PI * 50 * n) / sampleRate;
    return edge * harmonics.reduce((sum, gain, k) => sum + gain * Math.sin((k + 1) * phase), 0);
  });
}

/** Five syllables of a voice of about 120 Hz with two formants each. */
function voice(sampleRate: number, seed: number): Float64Array {
  const random = seededRandom(seed);
  const out = new Float64Array(Math.round(1.5 * sampleRate));
  const syllable = Math.round(0.3 * sampleRate);
  for (let start = 0; start + syllable <= out.length; start += syllable) {
    const first = resonator(350 + 450 * random(), 6, sampleRate);
    const second = resonator(1000 + 1300 * random(), 8, sampleRate);
    const pitch = 105 + 35 * random();
    let phase = 0;
    for (let n = 0; n < syllable; n++) {
      phase += pitch / sampleRate;
      const pulse = phase >= 1 ? 1 : 0;
      phase -= pulse;
      const open = Math.sin((Math.PI * n) / syllable) ** 2;
      out[start + n] = open * (first(pulse) + 0.5 * second(pulse));
    }
  }
  return out;
}

/** Two-pole band-pass, 1 at its centre. Source: Bristow-Johnson, audio EQ cookbook. */
function resonator(hz: number, q: number, sampleRate: number): (input: number) => number {
  const w = (2 * Math.PI * hz) / sampleRate;
  const alpha = Math.sin(w) / (2 * q);
  let x1 = 0;
  let x2 = 0;
  let y1 = 0;
  let y2 = 0;
  return (input) => {
    const output = (alpha * (input - x2) + 2 * Math.cos(w) * y1 - (1 - alpha) * y2) / (1 + alpha);
    [x2, x1] = [x1, input];
    [y2, y1] = [y1, output];
    return output;
  };
}
