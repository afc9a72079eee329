import { convolve } from '../../../dsp/fft/convolve';
import { markSignal, standardMark, type MarkSpec } from '../../../dsp/signal/mark';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { sweepSignal, synchronisedSweep, type SweepSpec } from '../../../dsp/signal/sweep';

/** A take made up for the tests: marks from channel 0, then one sweep per channel. */
export interface SyntheticTake {
  readonly rate: number;
  readonly mark: MarkSpec;
  readonly sweep: SweepSpec;
  readonly markStarts: readonly number[];
  readonly sweepStarts: readonly number[];
  readonly lengthSamples: number;
}

export interface TakeOptions {
  readonly channels: number;
  readonly seed?: number;
  readonly rate?: number;
  readonly sweepSamples?: number;
  readonly tailSeconds?: number;
  readonly leadSeconds?: number;
}

export function makeTake(options: TakeOptions): SyntheticTake {
  const { channels, seed = 1, rate = 48_000, sweepSamples = 2 ** 15, tailSeconds = 0.7 } = options;
  const random = seededRandom(seed);
  const mark = standardMark(rate);
  const sweep = synchronisedSweep(20, 20_000, sweepSamples, rate);
  const markStarts: number[] = [];
  const sweepStarts: number[] = [];
  let at = Math.round((options.leadSeconds ?? 1.5) * rate);
  for (let channel = 0; channel < channels; channel++) {
    markStarts.push(at);
    const sweepStart = at + mark.lengthSamples + Math.round(0.3 * rate);
    sweepStarts.push(sweepStart);
    const jitter = Math.floor(random() * 64) / 1000;
    at = sweepStart + sweepSamples + Math.round((tailSeconds + jitter) * rate);
  }
  markStarts.push(at);
  return { rate, mark, sweep, markStarts, sweepStarts, lengthSamples: at + rate };
}

export interface RoomOptions {
  readonly delaySeconds: number;
  readonly t60: number;
  /** Energy of the direct sound over that of all the rest, dB. */
  readonly directDb?: number;
  readonly seed: number;
  readonly rate?: number;
  readonly gain?: number;
}

/** Direct sound at a fractional delay, six early reflections, a decaying noise tail. */
export function makeRoom(options: RoomOptions): Float64Array {
  const { delaySeconds, t60, directDb = 0, seed, rate = 48_000, gain = 1 } = options;
  const random = seededRandom(seed);
  const normal = gaussian(random);
  const rest = new Float64Array(Math.round((delaySeconds + t60) * rate) + 64);
  const direct = delaySeconds * rate;
  for (let k = 0; k < 6; k++) {
    const later = (0.0015 + 0.02 * random()) * rate;
    addTap(rest, direct + later, (random() < 0.5 ? -1 : 1) * (0.25 + 0.3 * random()));
  }
  let low = 0;
  for (let n = Math.ceil(direct) + Math.round(0.003 * rate); n < rest.length; n++) {
    const seconds = (n - direct) / rate;
    low += 0.6 * (normal() - low);
    rest[n] = (rest[n] ?? 0) + 0.06 * low * 10 ** ((-3 * seconds) / t60);
  }
  let energy = 0;
  for (const value of rest) energy += value * value;
  const scale = Math.sqrt(10 ** (-directDb / 10) / energy);
  const response = rest.map((value) => value * scale);
  addTap(response, direct, 1);
  return response.map((value) => value * gain);
}

/** Adds a band-limited pulse at a fractional position. */
export function addTap(target: Float64Array, position: number, amplitude: number): void {
  const middle = Math.floor(position);
  for (let n = middle - 31; n <= middle + 32; n++) {
    const x = n - position;
    const window = 0.5 * (1 + Math.cos((Math.PI * x) / 33));
    const sinc = Math.abs(x) < 1e-12 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
    if (n >= 0 && n < target.length) target[n] = (target[n] ?? 0) + amplitude * window * sinc;
  }
}

/** Audio lost (+) or repeated (−): from `atSample` of the capture on, by so many capture samples. */
export interface MadeFault {
  readonly atSample: number;
  readonly samples: number;
}

export interface CaptureOptions {
  readonly rate?: number;
  readonly skewPpm?: number;
  /** Position of stimulus sample 0 in the capture, seconds; may be negative. */
  readonly latencySeconds?: number;
  /** Signal over noise while a mark sounds, dB. */
  readonly snrDb?: number;
  readonly faults?: readonly MadeFault[];
  /** Receivers mute the stream's first seconds. */
  readonly muteSeconds?: number;
  readonly seed?: number;
  readonly level?: number;
}

/** Position in the capture (no faults) of a stimulus sample. */
export function truePosition(take: SyntheticTake, options: CaptureOptions, sample: number): number {
  const ratio = ((options.rate ?? take.rate) / take.rate) * (1 + (options.skewPpm ?? 0) * 1e-6);
  return (options.latencySeconds ?? 0.5) * (options.rate ?? take.rate) + ratio * sample;
}

/** What a microphone hears of a take; `rooms` one response per channel, null for a dead speaker. */
export function captureTake(
  take: SyntheticTake,
  rooms: readonly (Float64Array | null)[],
  options: CaptureOptions = {},
): Float64Array {
  const heard = new Float64Array(take.lengthSamples + take.rate);
  const mute = (options.muteSeconds ?? 0) * take.rate;
  const add = (signal: Float64Array, room: Float64Array | null | undefined, start: number) => {
    if (!room) return;
    const audible = signal.map((value, n) => (start + n < mute ? 0 : value));
    const sound = convolve(audible, room);
    for (const [n, value] of sound.entries()) {
      if (start + n < heard.length) heard[start + n] = (heard[start + n] ?? 0) + value;
    }
  };
  const mark = markSignal(take.mark);
  for (const start of take.markStarts) add(mark, rooms[0], start);
  const sweep = sweepSignal(take.sweep);
  for (const [channel, start] of take.sweepStarts.entries()) add(sweep, rooms[channel], start);
  const level = options.level ?? 0.1;
  const capture = readOff(heard, take, options);
  const noise = gaussian(seededRandom((options.seed ?? 1) + 77));
  const rms =
    options.snrDb === undefined ? 0 : markRms(take, rooms[0]) * 10 ** (-options.snrDb / 20);
  return capture.map((value) => level * (value + rms * noise()));
}

/** Rms of the received mark over its own length, from the arrival on. */
function markRms(take: SyntheticTake, room: Float64Array | null | undefined): number {
  if (!room) return 1;
  const sound = convolve(markSignal(take.mark), room);
  const power = sound.reduce((sum, value) => sum + value * value, 0) / take.mark.lengthSamples;
  return Math.sqrt(power);
}

/** Reads the sound in the room with the capture's clock. */
function readOff(heard: Float64Array, take: SyntheticTake, options: CaptureOptions): Float64Array {
  const rate = options.rate ?? take.rate;
  const origin = truePosition(take, options, 0);
  const ratio = truePosition(take, options, 1) - origin;
  const faults = options.faults ?? [];
  const lost = faults.reduce((sum, { samples }) => sum + samples, 0);
  const length = Math.max(0, Math.ceil(origin + ratio * take.lengthSamples - lost));
  const capture = new Float64Array(length);
  const cutoff = Math.min(1, rate / take.rate);
  const half = Math.ceil(32 / cutoff);
  const phases = 512;
  const table = Array.from({ length: phases + 1 }, (_, phase) => {
    const row = new Float64Array(2 * half);
    for (let k = 0; k < 2 * half; k++) {
      const x = k - half + 1 - phase / phases;
      const sinc = Math.abs(x) < 1e-12 ? cutoff : Math.sin(Math.PI * cutoff * x) / (Math.PI * x);
      row[k] = sinc * 0.5 * (1 + Math.cos((Math.PI * x) / (half + 1)));
    }
    return row;
  });
  for (let n = 0; n < length; n++) {
    let from = n;
    for (const { atSample, samples } of faults) if (n >= atSample) from += samples;
    const time = (from - origin) / ratio;
    const whole = Math.floor(time);
    const along = (time - whole) * phases;
    const row = table[Math.floor(along)];
    const next = table[Math.floor(along) + 1];
    if (!row || !next || whole + half < 0 || whole - half > heard.length) continue;
    const blend = along - Math.floor(along);
    let sum = 0;
    for (let k = 0; k < row.length; k++) {
      const tap = (row[k] ?? 0) + blend * ((next[k] ?? 0) - (row[k] ?? 0));
      sum += tap * (heard[whole - half + 1 + k] ?? 0);
    }
    capture[n] = sum;
  }
  return capture;
}
