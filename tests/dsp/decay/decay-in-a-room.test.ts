import { it } from 'vitest';
import { readDecayBands } from '../../../dsp/decay/read-decay-bands';
import { bandDecay } from '../../../dsp/room/decay';
import { drawRoom, drawSeats } from '../../../dsp/room/draw-room';
import { drawSpeaker, placeSpeaker } from '../../../dsp/room/draw-speaker';
import { impulseResponseAt } from '../../../dsp/room/impulse-response-at';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
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
