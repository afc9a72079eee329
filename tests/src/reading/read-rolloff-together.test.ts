import { describe, expect, it } from 'vitest';
import { sealedResponse } from '../../../dsp/rolloff/box-response';
import { crossingHz } from '../../../dsp/rolloff/crossing';
import { rolloffBands } from '../../../dsp/rolloff/rolloff-bands';
import { seededRandom } from '../../../dsp/signal/random';
import { readRolloff } from '../../../src/reading/read-rolloff';
import { readRolloffTogether, type HeardAtSeat } from '../../../src/reading/read-rolloff-together';
import type { Estimate } from '../../../src/reading/reading';
import { makeModalRoom, modalResponse, type Point } from '../../dsp/rolloff/modal-room';

const speaker = sealedResponse(52, 0.75);
const room = makeModalRoom([5.1, 4.2, 2.5], [0.35, 0.35], seededRandom(8));
const seat: Point = [3.4, 2, 1.15];
const places: readonly (readonly [HeardAtSeat['channel'], Point])[] = [
  ['FL', [0.9, 1, 1]],
  ['FR', [0.9, 3.3, 1]],
  ['SiL', [3.2, 0.4, 1.3]],
  ['SiR', [3.2, 3.8, 1.3]],
];
const responses = places.map(([channel, at]) => ({
  channel,
  ir: modalResponse(room, at, seat, speaker),
}));
const heard = responses.map(({ channel, ir }): HeardAtSeat => ({
  channel,
  bands: rolloffBands(ir, null),
}));

const width = (estimate: Estimate | undefined): number =>
  estimate ? estimate.interval[1] / estimate.interval[0] : Number.NaN;

describe('readRolloffTogether', () => {
  it('is nearer the truth with four speakers of one model than with one, as a rule', () => {
    const together = readRolloffTogether(heard, false).rolloff;
    const truthHz = crossingHz(speaker, 10) ?? 0;
    const error = (estimate: Estimate | undefined): number =>
      Math.abs(Math.log((estimate?.median ?? Number.NaN) / truthHz));
    const alone = responses.map(({ ir }) => error(readRolloff(ir, null, false).rolloff?.f10Hz));
    expect(error(together?.f10Hz)).toBeLessThan(
      alone.reduce((sum, one) => sum + one, 0) / alone.length,
    );
    const [low, high] = together?.f10Hz.interval ?? [];
    const truth = crossingHz(speaker, 10) ?? 0;
    expect(low).toBeLessThan(truth);
    expect(high).toBeGreaterThan(truth);
  });

  it('reads one response as readRolloff does', () => {
    const [response] = responses;
    if (!response) throw new RangeError('no response');
    const alone = readRolloff(response.ir, null, false);
    expect(readRolloffTogether(heard.slice(0, 1), false)).toEqual(alone);
  });

  it('believes a sheet that fits', () => {
    const sheetHz = crossingHz(speaker, 3) ?? 0;
    const plain = readRolloffTogether(heard, false).rolloff;
    const told = readRolloffTogether(heard, false, sheetHz).rolloff;
    expect(width(told?.f3Hz)).toBeLessThan(width(plain?.f3Hz));
  });

  it('refuses an empty list', () => {
    expect(() => readRolloffTogether([], false)).toThrow('got none');
  });
});
