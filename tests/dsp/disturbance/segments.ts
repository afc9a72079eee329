import { convolve } from '../../../dsp/fft/convolve';
import { deconvolveSweep } from '../../../dsp/response/deconvolve';
import type { DisturbanceInput } from '../../../dsp/disturbance/disturbance';
import { drawRoom, drawSeats } from '../../../dsp/room/draw-room';
import { drawSpeaker, placeSpeaker } from '../../../dsp/room/draw-speaker';
import { impulseResponseAt } from '../../../dsp/room/impulse-response-at';
import { roomNoise } from '../../../dsp/room/room-noise';
import { seededRandom } from '../../../dsp/signal/random';
import { sweepSignal, synchronisedSweep, type SweepSpec } from '../../../dsp/signal/sweep';

export const rate = 48_000;
const preSamples = Math.round(0.17 * rate);
const lengthSamples = preSamples + Math.round(1.36 * rate);

/** What the microphone hears of one sweep in a simulated room, without noise. */
export interface CleanSegment {
  readonly sweep: SweepSpec;
  readonly heard: Float64Array;
}

/** Rooms of three kinds, every fourth speaker a sub; 3 % of second and third harmonic. */
export function cleanSegment(seed: number): CleanSegment {
  const random = seededRandom(seed * 7 + 3);
  const kind = seed % 4 === 3 ? 'sub' : 'main';
  const room = drawRoom(seed, (['typical', 'live', 'leaky'] as const)[seed % 3]);
  const [seat = { x: 1, y: 1, z: 1 }] = drawSeats(room, seed, 1);
  const position = {
    x: 0.5 + random() * (room.size.x - 1),
    y: room.size.y - 0.3 - 0.4 * random(),
    z: kind === 'sub' ? 0.3 : 0.9 + 0.3 * random(),
  };
  const box = random() < 0.5 ? 'sealed' : 'vented';
  const model = drawSpeaker(seed, { kind, box, misaligned: random() < 0.3 });
  const response = impulseResponseAt(room, placeSpeaker(model, position, seat), seat, rate);
  const sweep = synchronisedSweep(10, kind === 'sub' ? 500 : 20_000, 2 ** 17, rate);
  // Harmonics end at 22 kHz, as a recorder's filter makes them.
  const below = (n: number, order: number): number => {
    const hz = sweep.startHz * (sweep.endHz / sweep.startHz) ** (n / sweep.lengthSamples);
    return Math.min(1, Math.max(0, (22_000 - order * hz) / 1000));
  };
  const played = sweepSignal(sweep).map(
    (v, n) =>
      v +
      0.03 * below(n, 2) * (2 * v * v - 1) * Math.min(1, n / 4800) +
      0.03 * below(n, 3) * (4 * v ** 3 - 3 * v),
  );
  const sound = convolve(played, response);
  const heard = new Float64Array(preSamples + sweep.lengthSamples + Math.round(1.03 * rate));
  for (let n = preSamples; n < heard.length; n++) heard[n] = 0.05 * (sound[n - preSamples] ?? 0);
  return { sweep, heard };
}

export function noise(length: number, seed: number, rmsDb: number): Float64Array {
  const rms = 10 ** (rmsDb / 20);
  return roomNoise(length, rate, seed, { pink: 0.95 * rms, hiss: 0.1 * rms });
}

/** The segment as captured with 16 bits, in noise, with a sound added. */
export function captured(
  { sweep, heard }: CleanSegment,
  seed: number,
  noiseDb: number,
  added: Float64Array | null,
): DisturbanceInput {
  const floor = noise(heard.length, seed + 0.25, noiseDb);
  const sum = heard.map(
    (value, n) => Math.round(32768 * (value + (floor[n] ?? 0) + (added?.[n] ?? 0))) / 32768,
  );
  const ir = deconvolveSweep(sum, preSamples, sweep, { preSamples, lengthSamples });
  const silence = noise(3 * rate, seed + 0.75, noiseDb);
  return { heard: sum, sweepAt: preSamples, sweep, ir, silence };
}
