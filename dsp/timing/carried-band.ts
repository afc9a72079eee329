import { nextPowerOfTwo, realSpectrum } from '../fft/fft';
import type { ImpulseResponse } from '../response/impulse-response';
import { powerOf } from '../response/whole-spectrum';

/** Bands a third of an octave wide. */
const bandsPerOctave = 3;
const lowestHz = 20;
const leastMarginDb = 15;
const deepestDb = 25;
const widestOctaves = 2.6;
const narrowestOctaves = 1;

/**
 * The uppermost part of the spectrum that a response carries: neighbouring third-octaves, up to
 * 2.6 octaves together, each 15 dB or more over the noise and within 25 dB of the strongest. Null
 * when that is less than an octave. `signal` and `noise` are stretches of the response as
 * [from, to] in samples.
 */
export function findCarriedBand(
  ir: ImpulseResponse,
  signal: readonly [number, number],
  noise: readonly [number, number],
): [number, number] | null {
  const size = nextPowerOfTwo(Math.max(signal[1] - signal[0], noise[1] - noise[0], 2));
  const heard = powerSpectrum(ir.samples, signal, size);
  const hiss = powerSpectrum(ir.samples, noise, size);
  const edges: number[] = [];
  for (let hz = lowestHz; hz < 0.45 * ir.sampleRate; hz *= 2 ** (1 / bandsPerOctave))
    edges.push(hz);
  const bands = edges.slice(0, -1).map((low, k) => {
    const high = edges[k + 1] ?? low;
    const bin = ir.sampleRate / size;
    return {
      signalDb: meanDb(heard, low / bin, high / bin),
      noiseDb: meanDb(hiss, low / bin, high / bin),
    };
  });
  const strongest = bands.reduce((most, { signalDb }) => Math.max(most, signalDb), -Infinity);
  const carried = bands.map(
    ({ signalDb, noiseDb }) =>
      signalDb - noiseDb >= leastMarginDb && signalDb >= strongest - deepestDb,
  );
  let top = carried.length - 1;
  while (top >= 0) {
    while (top >= 0 && carried[top] !== true) top--;
    let bottom = top;
    const reach = top - Math.round(widestOctaves * bandsPerOctave) + 1;
    while (bottom > Math.max(0, reach) && carried[bottom - 1] === true) bottom--;
    if (top >= 0 && top - bottom + 1 >= narrowestOctaves * bandsPerOctave) {
      return [edges[bottom] ?? 0, edges[top + 1] ?? 0];
    }
    top = bottom - 1;
  }
  return null;
}

/** Power per bin and per sample of a stretch, faded at its ends. */
function powerSpectrum(
  samples: Float64Array,
  [from, to]: readonly [number, number],
  size: number,
): Float64Array {
  const piece = samples.slice(Math.max(0, from), Math.max(0, to));
  const edge = Math.min(piece.length >> 1, Math.max(16, piece.length >> 4));
  for (let n = 0; n < edge; n++) {
    const gain = 0.5 * (1 - Math.cos((Math.PI * (n + 0.5)) / edge));
    const last = piece.length - 1 - n;
    piece[n] = gain * (piece[n] ?? 0);
    piece[last] = gain * (piece[last] ?? 0);
  }
  const power = powerOf(realSpectrum(piece, size));
  for (let bin = 0; bin < power.length; bin++) {
    power[bin] = (power[bin] ?? 0) / Math.max(1, piece.length);
  }
  return power;
}

function meanDb(power: Float64Array, low: number, high: number): number {
  const from = Math.max(1, Math.floor(low));
  const to = Math.max(from + 1, Math.ceil(high));
  let sum = 0;
  for (let bin = from; bin < to; bin++) sum += power[bin] ?? 0;
  return 10 * Math.log10(sum / (to - from) + 1e-30);
}
