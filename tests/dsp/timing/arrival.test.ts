import { describe, expect, it } from 'vitest';
import { convolve } from '../../../dsp/fft/convolve';
import { deconvolveSweep } from '../../../dsp/response/deconvolve';
import type { ImpulseResponse } from '../../../dsp/response/impulse-response';
import { drawRoom, drawSeats } from '../../../dsp/room/draw-room';
import { drawSpeaker, placeSpeaker, type SpeakerOptions } from '../../../dsp/room/draw-speaker';
import { impulseResponseAt } from '../../../dsp/room/impulse-response-at';
import { ceilingPath, ceilingPoint, placeAround } from '../../../dsp/room/place';
import { distanceBetween } from '../../../dsp/room/point';
import { soundSpeed } from '../../../dsp/room/room';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { sweepSignal, synchronisedSweep } from '../../../dsp/signal/sweep';
import { findArrival } from '../../../dsp/timing/find-arrival';
import { readPolarity } from '../../../dsp/timing/polarity';
import { expectClose } from '../../close';
import { addTap, makeRoom } from './synthetic-take';

const rate = 48_000;
const pre = 4800;

/** A response with `pre` samples before its zero and white noise so far below its peak. */
function respond(response: Float64Array, noiseDb: number, seed = 1): ImpulseResponse {
  const normal = gaussian(seededRandom(seed));
  const samples = new Float64Array(pre + response.length);
  samples.set(response, pre);
  const peak = response.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  const noise = peak * 10 ** (noiseDb / 20);
  return {
    samples: samples.map((value) => value + noise * normal()),
    sampleRate: rate,
    zeroIndex: pre,
  };
}

function pulses(...taps: readonly (readonly [seconds: number, amplitude: number])[]) {
  const response = new Float64Array(9600);
  for (const [seconds, amplitude] of taps) addTap(response, seconds * rate, amplitude);
  return response;
}

describe('findArrival', () => {
  it('finds a lone pulse to a thousandth of a sample', () => {
    for (const delay of [0.005, 0.0071234, 0.0200005]) {
      const arrival = findArrival(respond(pulses([delay, 0.7]), -80));
      expectClose(arrival?.seconds, delay, 0.001 / rate);
      expect(arrival?.firstDb).toBe(0);
    }
  });

  it('finds an arrival before the zero of the response', () => {
    const { samples } = respond(pulses([0.01, 1]), -70);
    const early = { samples, sampleRate: rate, zeroIndex: pre + 960 };
    expectClose(findArrival(early)?.seconds, -0.01, 1e-7);
  });

  it('takes the first of two paths and tells the strongest', () => {
    const arrival = findArrival(respond(pulses([0.005, 0.25], [0.009, -1]), -70));
    expectClose(arrival?.seconds, 0.005, 1e-6);
    expectClose(arrival?.strongestSeconds, 0.009, 1e-6);
    expectClose(arrival?.firstDb, -12.04, 0.1);
    expect(arrival?.earlierPossible).toBe(false);
  });

  it('passes by what is more than 20 dB down or more than 15 ms early', () => {
    const weak = findArrival(respond(pulses([0.005, 0.08], [0.009, 1]), -70));
    expectClose(weak?.seconds, 0.009, 1e-6);
    const early = findArrival(respond(pulses([0.005, 0.8], [0.025, 1]), -70));
    expectClose(early?.seconds, 0.025, 1e-6);
  });

  it('says when noise could hide an earlier arrival', () => {
    expect(findArrival(respond(pulses([0.01, 1]), -28))?.earlierPossible).toBe(true);
    expect(findArrival(respond(pulses([0.01, 1]), -45))?.earlierPossible).toBe(false);
  });

  it('finds no arrival in noise, in silence and in a response too short for any noise', () => {
    const normal = gaussian(seededRandom(3));
    const noise = new Float64Array(30_000).map(() => normal());
    expect(findArrival({ samples: noise, sampleRate: rate, zeroIndex: pre })).toBeNull();
    const silence = new Float64Array(30_000);
    expect(findArrival({ samples: silence, sampleRate: rate, zeroIndex: pre })).toBeNull();
    expect(findArrival({ samples: noise.slice(0, 60), sampleRate: rate, zeroIndex: 0 })).toBeNull();
  });

  it('finds the direct sound below a stronger reverberation', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const delaySeconds = 0.004 + 0.0007 * seed;
      const room = makeRoom({ delaySeconds, t60: 0.8, directDb: -8, seed });
      expectClose(findArrival(respond(room, -50, seed))?.seconds, delaySeconds, 5e-6);
    }
  });

  it('works at other sample rates', () => {
    for (const other of [44_100, 96_000, 192_000]) {
      const samples = new Float64Array(other / 2);
      addTap(samples, 0.11123 * other, 1);
      const arrival = findArrival({ samples, sampleRate: other, zeroIndex: 0.1 * other });
      expectClose(arrival?.seconds, 0.01123, 2e-7, 'the pulse is made of 64 taps');
    }
  });

  it('refuses a band that is none', () => {
    const ir = respond(pulses([0.01, 1]), -50);
    expect(() => findArrival(ir, { lowHz: 5000, highHz: 4000 })).toThrow(/5000 … 4000/);
  });
});

interface Case {
  readonly ir: ImpulseResponse;
  readonly inverted: boolean;
  readonly metresPerSecond: number;
  readonly direct: number;
  readonly ceiling: number;
}

/** A speaker in a simulated room, at 2 to 4 m, at noise 45 dB below its peak. */
function drawCase(seed: number, azimuth: number, options: SpeakerOptions = {}): Case {
  const room = drawRoom(seed);
  const random = seededRandom(1000 * seed + azimuth);
  const seat = drawSeats(room, seed, 1)[0];
  if (!seat) throw new Error('no seat');
  const level = placeAround(room, seat, azimuth, 0, 2 + 2 * random(), 0.3);
  const place = options.kind === 'sub' ? { ...level, z: 0.3 } : level;
  const inverted = random() < 0.5;
  const model = { ...drawSpeaker(100 * seed + azimuth, options), inverted };
  const aim = options.kind === 'bounced' ? ceilingPoint(room, place, seat) : seat;
  const speaker = placeSpeaker(model, place, aim);
  const response = impulseResponseAt(room, speaker, seat, rate, options.kind === 'sub' ? 1.3 : 0.3);
  return {
    ir: respond(response, -45, seed),
    inverted,
    metresPerSecond: soundSpeed(room),
    direct: distanceBetween(place, seat),
    ceiling: ceilingPath(room, place, seat),
  };
}

const rooms = Array.from({ length: 16 }, (_, k) =>
  [0, 30, -30, 110, -110].map((azimuth) => drawCase(k + 1, azimuth)),
);

function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Infinity;
}

/** Distance read minus true distance, m. */
function errorOf({ ir, metresPerSecond, direct }: Case): number {
  const arrival = findArrival(ir);
  return arrival ? arrival.seconds * metresPerSecond - direct : Infinity;
}

describe('findArrival in simulated rooms', () => {
  it('tells distances relative to the centre to millimetres', () => {
    const errors = rooms.flatMap(([centre, ...others]) => {
      const own = centre ? errorOf(centre) : Infinity;
      return others.map((other) => Math.abs(errorOf(other) - own));
    });
    // Half of it is that these speakers differ in their crossovers and their treble.
    expect(quantile(errors, 0.5)).toBeLessThan(1.2e-3);
    expect(quantile(errors, 0.9)).toBeLessThan(2.6e-3);
    expect(quantile(errors, 1)).toBeLessThan(5e-3);
  });

  it('gives intervals that hold nine in ten of those distances', () => {
    let held = 0;
    let count = 0;
    for (const [centre, ...others] of rooms) {
      const reference = centre ? findArrival(centre.ir) : null;
      if (!centre || !reference) continue;
      for (const other of others) {
        const arrival = findArrival(other.ir);
        if (!arrival) continue;
        const half = Math.hypot(...[arrival, reference].map((a) => a.interval[1] - a.seconds));
        const error = errorOf(other) - errorOf(centre);
        count++;
        if (Math.abs(error) <= half * other.metresPerSecond) held++;
      }
    }
    expect(count).toBe(64);
    expect(held / count).toBeGreaterThan(0.82);
  });

  it('tells the early leak and the ceiling path of a bounced height', () => {
    for (let seed = 2; seed <= 9; seed++) {
      const bounced = drawCase(seed, 25, { kind: 'bounced' });
      const arrival = findArrival(bounced.ir);
      expectClose(errorOf(bounced), 0.006, 0.006, 'the delay of its own treble');
      if (!arrival || arrival.strongestIndex - arrival.index < 5) continue;
      const path = arrival.strongestSeconds * bounced.metresPerSecond;
      expectClose(path, bounced.ceiling, 0.02);
    }
  });

  it('times a sub by its onset, with an interval that says how well', () => {
    const sweep = synchronisedSweep(10, 500, 2 ** 16, rate);
    const played = sweepSignal(sweep);
    const errors = Array.from({ length: 8 }, (_, k) => {
      const sub = drawCase(k + 1, 20, { kind: 'sub' });
      const captured = convolve(played, sub.ir.samples.slice(pre));
      const ir = deconvolveSweep(captured, 0, sweep, { preSamples: 9600, lengthSamples: 40_000 });
      const arrival = findArrival(ir);
      if (!arrival) throw new Error('no arrival');
      expect(arrival.bandAdapted).toBe(true);
      expect(arrival.bandHz[1]).toBeLessThan(500);
      const half = (arrival.interval[1] - arrival.seconds) * sub.metresPerSecond;
      expect(half).toBeGreaterThan(0.2);
      expect(half).toBeLessThan(1);
      return Math.abs(arrival.seconds * sub.metresPerSecond - sub.direct);
    });
    expect(quantile(errors, 0.5)).toBeLessThan(0.35);
    expect(quantile(errors, 0.8)).toBeLessThan(0.7);
  });

  it('reads a speaker without treble in the band it has, less certainly', () => {
    const [whole] = rooms[2] ?? [];
    if (!whole) throw new Error('no case');
    // A low-pass at 1.5 kHz, 36 dB per octave and more: a Gaussian of 0.15 ms.
    const lowPass = Float64Array.from({ length: 97 }, (_, n) =>
      Math.exp(-0.5 * ((n - 48) / (0.15e-3 * rate)) ** 2),
    );
    const dull = convolve(whole.ir.samples.slice(pre), lowPass).slice(48);
    const arrival = findArrival(respond(dull, -60));
    if (!arrival) throw new Error('no arrival');
    expect(arrival.bandAdapted).toBe(true);
    const half = (arrival.interval[1] - arrival.seconds) * whole.metresPerSecond;
    expect(half).toBeGreaterThan(0.03);
    expectClose(arrival.seconds * whole.metresPerSecond, whole.direct, Math.min(half, 0.15));
  });
});

describe('readPolarity', () => {
  it('decides nearly every speaker in simulated rooms and none of them wrongly', () => {
    let decided = 0;
    let count = 0;
    for (const { ir, inverted } of rooms.flat()) {
      const arrival = findArrival(ir);
      if (!arrival) continue;
      count++;
      const { polarity, ground } = readPolarity(ir, arrival);
      if (polarity === 'cannot tell') continue;
      decided++;
      expect(polarity).toBe(inverted ? 'inverted' : 'normal');
      expect(ground).toBe('both agree');
    }
    expect(decided / count).toBeGreaterThan(0.95);
  });

  it('turns with the response', () => {
    const [one] = rooms[0] ?? [];
    if (!one) throw new Error('no case');
    const turned = { ...one.ir, samples: one.ir.samples.map((value) => -value) };
    const read = (ir: ImpulseResponse) => {
      const arrival = findArrival(ir);
      return arrival ? readPolarity(ir, arrival) : null;
    };
    expect(read(turned)?.peakSign).toBe(-(read(one.ir)?.peakSign ?? 0));
    expectClose(read(turned)?.phase, -(read(one.ir)?.phase ?? 0), 1e-9);
  });

  it('decides nothing in noise or from a sub', () => {
    const noisy = respond(makeRoom({ delaySeconds: 0.01, t60: 0.3, seed: 5 }), -25);
    const arrival = findArrival(noisy);
    if (!arrival) throw new Error('no arrival');
    expect(readPolarity(noisy, arrival)).toMatchObject({
      polarity: 'cannot tell',
      ground: 'too noisy',
    });
    const sub = { ...arrival, bandAdapted: true };
    expect(readPolarity(noisy, sub).ground).toBe('too narrow');
  });

  it('decides nothing when the two signs differ or the phase turns', () => {
    // Differentiated: the phase is 90° everywhere.
    const turned = respond(pulses([0.01, 1], [0.01 + 1 / rate, -1]), -70);
    const arrival = findArrival(turned);
    if (!arrival) throw new Error('no arrival');
    expect(readPolarity(turned, arrival).polarity).toBe('cannot tell');
  });
});
