import { powerToDb } from '../level/decibels';
import type { ImpulseResponse } from '../response/impulse-response';
import { logGrid } from '../response/smoothing';
import { transformResponse } from './band-envelope';
import { checkedArrival } from './checked-arrival';
import {
  blurSeconds,
  fractionWidthHz,
  gaussianEnvelope,
  gaussianPower,
  powerAt,
} from './gaussian-band';
import { tailPower } from './tail-power';

export interface BassDecayOptions {
  /** Steady noise that went through the same deconvolution; null: the response's own end tells. */
  readonly noise: ImpulseResponse | null;
  /** When the sound arrives, s after zero delay; left out: the largest sample. */
  readonly arrivalSeconds?: number;
  /** Range of frequencies, Hz; default 20 to 300. */
  readonly bandHz?: readonly [number, number];
  /** Rows to the octave; default 24. */
  readonly rowsPerOctave?: number;
  /** Each row hears 1/fraction octave; default 6. Larger is finer in frequency, coarser in time. */
  readonly fraction?: number;
  /** The columns' span and step, s; default 1 s by 10 ms. */
  readonly spanSeconds?: number;
  readonly stepSeconds?: number;
}

/** Level over frequency (rows) and time (columns). */
export interface BassDecayPicture {
  /** Frequency of each row, rising, evenly spaced on a log axis. */
  readonly hz: Float64Array;
  /** Time of each column after the arrival, from 0. */
  readonly seconds: Float64Array;
  /** Level dB re the largest, row by row: [row · columns + column]; not below the row's floor. */
  readonly db: Float64Array;
  /** Level of the noise in each row on the same scale. */
  readonly floorDb: Float64Array;
  /** Duration to which each row blurs a click, at half power, s; times its width in Hz 0.441. */
  readonly blurSeconds: Float64Array;
}

/** Levels reach at least so far down when the noise does not end them, dB. */
const deepestDb = -120;

/**
 * How the bass dies away: level of Gaussian bands of 1/fraction octave along time, constant Q, so
 * that time is told in finer steps the higher the frequency. Width and blur in time go together,
 * Δt·Δf = 0.441 at half power, the least there is: 1/6 octave blurs a click to 191 ms at 20 Hz and
 * to 13 ms at 300 Hz; a third of an octave to half of that. The blur is symmetric, so that a sound
 * shows from half of it before its arrival; a decay slower than the blur keeps its slope. Throws
 * RangeError for a grid that is none or steps that are not positive.
 */
export function bassDecay(ir: ImpulseResponse, options: BassDecayOptions): BassDecayPicture {
  const { bandHz = [20, 300], rowsPerOctave = 24, fraction = 6 } = options;
  const { spanSeconds = 1, stepSeconds = 0.01, noise } = options;
  if (!(stepSeconds > 0 && spanSeconds >= 0 && spanSeconds / stepSeconds <= 1e5)) {
    throw new RangeError(`columns need 0 < step ≤ span, got ${stepSeconds}, ${spanSeconds}`);
  }
  const hz = logGrid(bandHz[0], bandHz[1], rowsPerOctave);
  const arrival = checkedArrival(ir, options.arrivalSeconds);
  const count = Math.floor(spanSeconds / stepSeconds + 1e-9) + 1;
  const seconds = Float64Array.from({ length: count }, (_, n) => n * stepSeconds);
  const widths = hz.map((middle) => fractionWidthHz(middle, fraction));
  const padding = 2 * blurSeconds(widths[0] ?? 1);
  const heard = transformResponse(ir, padding);
  const hiss = noise && transformResponse(noise, padding);
  const powers = new Float64Array(hz.length * count);
  const floors = hz.map((middle, row) => {
    const width = widths[row] ?? 1;
    const envelope = gaussianEnvelope(heard, middle, width);
    for (let n = 0; n < count; n++) {
      powers[row * count + n] = powerAt(envelope, arrival + (seconds[n] ?? 0));
    }
    return hiss ? gaussianPower(hiss, middle, width) : tailPower(envelope, blurSeconds(width));
  });
  const largest = powers.reduce((most, power) => Math.max(most, power), 0) || 1;
  const floorDb = floors.map((power) => Math.max(powerToDb(power / largest), deepestDb));
  const db = powers.map((power, n) => {
    return Math.max(powerToDb(power / largest), floorDb[Math.floor(n / count)] ?? deepestDb);
  });
  return { hz, seconds, db, floorDb, blurSeconds: widths.map(blurSeconds) };
}
