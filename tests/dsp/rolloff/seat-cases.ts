import type { ImpulseResponse } from '../../../dsp/response/impulse-response';
import {
  sealedResponse,
  ventedResponse,
  type HighPassResponse,
} from '../../../dsp/rolloff/box-response';
import { fitRolloff, isRefusal, type RolloffFit } from '../../../dsp/rolloff/fit-rolloff';
import { rolloffBands, type RolloffBands } from '../../../dsp/rolloff/rolloff-bands';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { freeResponse, makeModalRoom, modalResponse, withRipple, type Point } from './modal-room';

/** A speaker's box and its response, ripple and all, at a seat. */
export interface SeatCase {
  readonly speaker: HighPassResponse;
  readonly ir: ImpulseResponse;
}

/** Rooms, boxes and places drawn evenly; closed and vented boxes by turns. */
export function drawSeatCases(count: number, seed: number): SeatCase[] {
  const random = seededRandom(seed);
  const between = (low: number, high: number): number => low + (high - low) * random();
  return Array.from({ length: count }, (_, i) => {
    const size = [between(3.8, 6.5), between(3, 5.2), between(2.3, 3)] as const;
    const seconds = between(0.2, 0.5);
    const room = makeModalRoom(size, [seconds * between(0.8, 2), seconds], random);
    const f0 = 22 * 4.5 ** random();
    const box =
      i % 2 === 0 ? sealedResponse(f0, between(0.5, 1.1)) : ventedResponse(f0, between(-1, 1));
    const speaker = withRipple(box, 0.6, 0.3, random);
    const source: Point = [between(0.3, 0.8), between(0.4, size[1] - 0.4), between(0.4, 1.4)];
    const seat: Point = [size[0] * between(0.5, 0.85), size[1] * between(0.3, 0.7), 1.15];
    return { speaker: box, ir: modalResponse(room, source, seat, speaker) };
  });
}

/** The fit; fails the test when it is refused. */
export function fitted(bands: RolloffBands, options: Parameters<typeof fitRolloff>[1]): RolloffFit {
  const fit = fitRolloff(bands, options);
  if (isRefusal(fit)) throw new Error(`refused: ${fit.refused}`);
  return fit;
}

/** Fit of a speaker in the free field, taken as captured close by. */
export function fitClose(speaker: HighPassResponse): RolloffFit {
  return fitted(rolloffBands(freeResponse(speaker), null), { place: 'close' });
}

export function holds({ low, high }: RolloffFit['f6Hz'], hz: number | null): boolean {
  return hz !== null && hz >= low && hz <= high;
}

/** White noise in response and silence, `db` re the response's 180 to 500 Hz level. */
export function noisyBands(ir: ImpulseResponse, db: number, seed: number): RolloffBands {
  const normal = gaussian(seededRandom(seed));
  const probe = ir.samples.map(() => normal());
  const quiet = probe.map((value) => value * 1e-9);
  // What a unit of noise is, re the response's level: 1e−18 of it stands in noisePower.
  const unit = rolloffBands(ir, { ...ir, samples: quiet }).noisePower[45] ?? 1;
  const sigma = 1e-9 * Math.sqrt(10 ** (db / 10) / unit);
  const samples = ir.samples.map((value) => value + sigma * normal());
  return rolloffBands({ ...ir, samples }, { ...ir, samples: probe.map((value) => sigma * value) });
}

export const logWidth = ({ low, high }: RolloffFit['f6Hz']): number => Math.log(high / low);

export const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
