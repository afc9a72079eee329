import { readDecayBands } from '../../dsp/decay/read-decay-bands';
import type { DecayTime } from '../../dsp/decay/decay-time';
import { convolve } from '../../dsp/fft/convolve';
import { deconvolveSweep } from '../../dsp/response/deconvolve';
import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import { drawSeats, type RoomPreset } from '../../dsp/room/draw-room';
import { impulseResponseAt } from '../../dsp/room/impulse-response-at';
import { roomNoise } from '../../dsp/room/room-noise';
import { sweepSignal, synchronisedSweep } from '../../dsp/signal/sweep';
import type { Layout } from '../../src/system/channel';
import { drawSystem } from './draw-system';
import { plainDecay, type PlainDecay } from './plain-decay';

export const decayRanges = ['EDT', 'T20', 'T30'] as const;
export type DecayName = (typeof decayRanges)[number];

/** One decay time of one octave in one room, seconds. */
export interface DecayCase {
  readonly range: DecayName;
  readonly midHz: number;
  /** Null when not told. */
  readonly seconds: number | null;
  readonly interval: readonly [number, number] | null;
  readonly trusted: boolean;
  /** The room's own, of which a seat is a sample: mean of other places without noise, by the book. */
  readonly roomSeconds: number | null;
  /** That of the response at this seat without noise, by the book; null where it falls too little. */
  readonly seatSeconds: number | null;
}

const rate = 16_000;
const bandsHz = [120, 4100] as const;
const sweep = synchronisedSweep(10, 7900, 2 ** 15, rate);
const beforeSamples = 2400;
/** Other places in the room that its own decay is the mean of. */
const elsewhere = 6;
/** Noise under the sweep as heard, dB. */
const noiseDb = -40;

/** The front left speaker's decay at the seat, through a sweep in noise, octave by octave. */
export function measureDecay(layout: Layout, preset: RoomPreset, seed: number): DecayCase[] {
  const { room, speakers, microphone } = drawSystem(layout, preset, seed);
  const front = speakers.find(({ channel }) => channel === 'FL')?.speaker;
  if (!front) throw new RangeError('the layout must have FL');
  const seconds = preset === 'live' ? 2 : 1;
  const response = impulseResponseAt(room, front, microphone, rate, seconds, 80);
  const heard = convolve(sweepSignal(sweep), response);
  const rms = Math.sqrt(heard.reduce((sum, x) => sum + x * x, 0) / sweep.lengthSamples);
  // The other speakers at eye level, each at a seat of its own: places that share nothing.
  const others = speakers.filter(
    ({ channel, bounced }) => channel !== 'FL' && !bounced && !channel.startsWith('Sub'),
  );
  const places = drawSeats(room, seed, 1 + elsewhere)
    .slice(1)
    .map((seat, n) => {
      const speaker = others[n % others.length]?.speaker ?? front;
      return impulseResponseAt(room, speaker, seat, rate, seconds, 80);
    });
  const after = response.length;
  const listen = (level: number, from: number): ImpulseResponse => {
    const power = { pink: Math.SQRT1_2, hiss: Math.SQRT1_2 };
    const scale = rms * 10 ** (noiseDb / 20);
    const samples = roomNoise(beforeSamples + sweep.lengthSamples + after, rate, from, power).map(
      (value, n) => scale * value + level * (heard[n - beforeSamples] ?? 0),
    );
    const lengths = { preSamples: beforeSamples, lengthSamples: beforeSamples + after };
    return deconvolveSweep(samples, beforeSamples, sweep, lengths);
  };
  const { bands } = readDecayBands(listen(1, seed + 0.15), {
    noise: listen(0, seed + 0.16),
    bandsHz,
  });
  return bands.flatMap(({ midHz, edt, t20, t30 }) => {
    const plain = plainDecay(response, rate, midHz);
    const there = places.map((place) => plainDecay(place, rate, midHz));
    const held = (
      range: DecayName,
      time: DecayTime,
      of: (plain: PlainDecay) => number | null,
    ): DecayCase => ({
      range,
      midHz,
      seconds: time.seconds,
      interval: time.interval,
      trusted: time.trusted,
      roomSeconds: meanOf(there.map(of)),
      seatSeconds: of(plain),
    });
    return [
      held('EDT', edt, (one) => one.edt),
      held('T20', t20, (one) => one.t20),
      held('T30', t30, (one) => one.t30),
    ];
  });
}

function meanOf(values: readonly (number | null)[]): number | null {
  const told = values.filter((value) => value !== null);
  return told.length === 0 ? null : told.reduce((sum, value) => sum + value, 0) / told.length;
}
