import { nextPowerOfTwo, realSignal, realSpectrum } from '../fft/fft';
import type { ImpulseResponse } from './impulse-response';
import { logInterpolate, pointBelow } from './log-points';
import { minimumPhase } from './minimum-phase';

/** A microphone's response; frequencies rise, arrays of one length. */
export interface MicrophoneResponse {
  readonly hz: readonly number[];
  readonly db: readonly number[];
  /** Null: minimum phase. */
  readonly phaseDegrees: readonly number[] | null;
}

/** What the microphone lacks is made up by at most this much; more would lift noise. */
export const mostBoostDb = 20;

/** Bins lie at most this far apart, so that bends at 10 Hz keep their phase. */
const spacingHz = 0.75;
const nepersPerDb = Math.LN10 / 20;

/**
 * Response at `hz` that correction takes out, dB: linear in log frequency between the points of
 * the file, its end values outside, not below −20 dB. Throws RangeError for hz below 0 or a
 * microphone without points.
 */
export function microphoneGainDb(microphone: MicrophoneResponse, hz: number): number {
  checkPoints(microphone);
  if (!(hz >= 0 && hz < Infinity)) throw new RangeError(`hz must not be negative, got ${hz}`);
  return gainAt(microphone, hz, pointBelow(microphone.hz, hz));
}

/**
 * The impulse response with the microphone's divided out; same length, rate and zero delay. The
 * phase is the file's own, joined to the minimum phase outside the file, or the minimum phase of
 * the magnitude; a minimum-phase microphone moves no arrival but by what its own roll-off delays.
 * At most 20 dB are made up anywhere. Throws RangeError for a microphone without points or with
 * arrays of different length. Method: real cepstrum, spectral division (common practice).
 */
export function correctForMicrophone(
  ir: ImpulseResponse,
  microphone: MicrophoneResponse,
): ImpulseResponse {
  checkPoints(microphone);
  const { samples, sampleRate } = ir;
  const size = nextPowerOfTwo(Math.max(2 * samples.length, sampleRate / spacingHz));
  const spectrum = realSpectrum(samples, size);
  divideBy(spectrum, microphoneSpectrum(microphone, size, sampleRate));
  return { ...ir, samples: realSignal(spectrum, size).slice(0, samples.length) };
}

interface Polar {
  readonly logMagnitude: Float64Array;
  readonly phase: Float64Array;
}

/** The last spectrum made for a microphone: a take asks for the same one for every speaker. */
const known = new WeakMap<MicrophoneResponse, { size: number; sampleRate: number; polar: Polar }>();

function microphoneSpectrum(
  microphone: MicrophoneResponse,
  size: number,
  sampleRate: number,
): Polar {
  const last = known.get(microphone);
  if (last?.size === size && last.sampleRate === sampleRate) return last.polar;
  const logMagnitude = new Float64Array(size / 2 + 1);
  let point = -1;
  for (let k = 0; k < logMagnitude.length; k++) {
    const hz = (k * sampleRate) / size;
    while (point + 1 < microphone.hz.length && (microphone.hz[point + 1] ?? 0) <= hz) point++;
    logMagnitude[k] = nepersPerDb * gainAt(microphone, hz, point);
  }
  const phase = minimumPhase(logMagnitude);
  if (microphone.phaseDegrees) {
    addExcess(phase, microphone.hz, microphone.phaseDegrees, sampleRate / size);
  }
  const polar = { logMagnitude, phase };
  known.set(microphone, { size, sampleRate, polar });
  return polar;
}

/**
 * Turns the minimum phase into the file's: what the file's exceeds it by is unwrapped, linear in
 * frequency between points, falls to 0 at 0 Hz and stays as it is above the last point.
 */
function addExcess(
  phase: Float64Array,
  hz: readonly number[],
  degrees: readonly number[],
  hzPerBin: number,
): void {
  const top = (phase.length - 1) * hzPerBin;
  const excess: { hz: number; radians: number }[] = [{ hz: 0, radians: 0 }];
  const minimum = Float64Array.from(phase);
  for (const [i, at] of hz.entries()) {
    if (at > top) break;
    const radians = (Math.PI / 180) * (degrees[i] ?? 0) - between(minimum, at / hzPerBin);
    const before = excess.at(-1)?.radians ?? 0;
    const turns = Math.round((radians - before) / (2 * Math.PI));
    excess.push({ hz: at, radians: radians - 2 * Math.PI * turns });
  }
  let point = 0;
  for (let k = 0; k < phase.length; k++) {
    const at = k * hzPerBin;
    while (point + 1 < excess.length && (excess[point + 1]?.hz ?? 0) <= at) point++;
    const low = excess[point];
    const high = excess[point + 1] ?? low;
    if (!low || !high) continue;
    const part = high.hz > low.hz ? (at - low.hz) / (high.hz - low.hz) : 0;
    phase[k] = (minimum[k] ?? 0) + low.radians + part * (high.radians - low.radians);
  }
}

/** x ← x / m; the first and the last bin stay real. */
function divideBy(x: Float64Array, { logMagnitude, phase }: Polar): void {
  for (let k = 0; k < logMagnitude.length; k++) {
    const gain = Math.exp(-(logMagnitude[k] ?? 0));
    const turn = k === 0 || k === logMagnitude.length - 1 ? 0 : -(phase[k] ?? 0);
    const re = x[2 * k] ?? 0;
    const im = x[2 * k + 1] ?? 0;
    const cos = gain * Math.cos(turn);
    const sin = gain * Math.sin(turn);
    x[2 * k] = re * cos - im * sin;
    x[2 * k + 1] = re * sin + im * cos;
  }
}

/** Gain at `hz`, which lies at or after the point of that index, before the next; −1 before all. */
function gainAt({ hz, db }: MicrophoneResponse, at: number, point: number): number {
  return Math.max(logInterpolate(hz, db, at, point), -mostBoostDb);
}

function between(values: Float64Array, position: number): number {
  const low = Math.min(Math.floor(position), values.length - 2);
  const start = values[low] ?? 0;
  return start + (position - low) * ((values[low + 1] ?? 0) - start);
}

function checkPoints({ hz, db, phaseDegrees }: MicrophoneResponse): void {
  if (hz.length === 0 || db.length !== hz.length) {
    throw new RangeError(`a microphone needs as many levels as frequencies, got ${db.length}`);
  }
  if (phaseDegrees && phaseDegrees.length !== hz.length) {
    throw new RangeError(`a microphone needs ${hz.length} phases, got ${phaseDegrees.length}`);
  }
}
