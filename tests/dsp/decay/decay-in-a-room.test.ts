import { expect, it } from 'vitest';
import { readDecayBands } from '../../../dsp/decay/read-decay-bands';
import { convolve } from '../../../dsp/fft/convolve';
import { meanSquare } from '../../../dsp/level/mean-square';
import { deconvolveSweep } from '../../../dsp/response/deconvolve';
import type { ImpulseResponse } from '../../../dsp/response/impulse-response';
import { bandDecay } from '../../../dsp/room/decay';
import { drawRoom, drawSeats } from '../../../dsp/room/draw-room';
import { drawSpeaker, placeSpeaker } from '../../../dsp/room/draw-speaker';
import { impulseResponseAt } from '../../../dsp/room/impulse-response-at';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { sweepSignal, synchronisedSweep } from '../../../dsp/signal/sweep';
import { expectClose } from '../../close';

const rate = 16_000;

it('reads T20 of 1 kHz at one seat as that of the room simulated', () => {
  const errors: number[] = [];
  for (let seed = 1; seed <= 12; seed++) {
    const room = drawRoom(seed);
    const seat = drawSeats(room, seed, 1)[0] ?? { x: 1, y: 1, z: 1 };
    const place = { x: 0.6, y: room.size.y - 0.6, z: 1.1 };
    const speaker = placeSpeaker(drawSpeaker(seed), place, seat);
    const response = impulseResponseAt(room, speaker, seat, rate, 1);
    const peak = response.reduce((most, one) => Math.max(most, Math.abs(one)), 0);
    const next = gaussian(seededRandom(seed));
    const hiss = (): number => peak * 1e-4 * next();
    const noise = { samples: new Float64Array(rate).map(hiss), sampleRate: rate, zeroIndex: 0 };
    const samples = response.map((value) => value + hiss());
    const { bands } = readDecayBands({ samples, sampleRate: rate, zeroIndex: 0 }, { noise });
    const t20 = bands.find(({ name }) => name === '1 kHz')?.t20;
    // Band 5 of the room is that of 1 kHz.
    const truth = bandDecay(room, 5).reverberationSeconds;
    const ratio = (t20?.seconds ?? 1e9) / truth;
    expectClose(ratio, 1, 0.25, 'one seat in a room that is not diffuse');
    errors.push(Math.log(ratio));
  }
  const mean = errors.reduce((sum, one) => sum + one, 0) / errors.length;
  expectClose(mean, 0, 0.08, 'twelve rooms');
});

it('reads through a sweep in noise what the response itself says', () => {
  const room = drawRoom(5);
  const seat = drawSeats(room, 5, 1)[0] ?? { x: 1, y: 1, z: 1 };
  const place = { x: 0.6, y: room.size.y - 0.6, z: 1.1 };
  const speaker = placeSpeaker(drawSpeaker(5, { f3Hz: [30, 50] }), place, seat);
  const response = impulseResponseAt(room, speaker, seat, rate, 1);
  const sweep = synchronisedSweep(10, 7900, 2 ** 16, rate);
  const before = 2400;
  const after = 1.3 * rate;
  const next = gaussian(seededRandom(5));
  const heard = convolve(sweepSignal(sweep), response);
  const rms = Math.sqrt(meanSquare(heard));
  const listen = (level: number): ImpulseResponse => {
    const captured = Float64Array.from({ length: before + 2 ** 16 + after }, (_, n) => {
      return level * (heard[n - before] ?? 0) + 0.01 * rms * next();
    });
    const lengths = { preSamples: before, lengthSamples: before + after };
    return deconvolveSweep(captured, before, sweep, lengths);
  };
  const options = { arrivalSeconds: 0.0105, bandsHz: [60, 4100] } as const;
  const through = readDecayBands(listen(1), { ...options, noise: listen(0) });
  const itself = { samples: response, sampleRate: rate, zeroIndex: 0 };
  const expected = readDecayBands(itself, { ...options, noise: null });
  expect(through.bands.map(({ name }) => name)).toContain('63 Hz');
  through.bands.forEach(({ t20, t30 }, n) => {
    const truth = expected.bands[n];
    expectClose((t20.seconds ?? 0) / (truth?.t20.seconds ?? 1), 1, 0.02);
    expectClose((t30.seconds ?? 0) / (truth?.t30.seconds ?? 1), 1, 0.03);
  });
});
