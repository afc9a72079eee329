import { describe, expect, it } from 'vitest';
import { delayCentre } from '../../../dsp/bass/delay-centre';
import { seededRandom } from '../../../dsp/signal/random';
import { expectClose } from '../../close';
import { echoes, hz } from './seat-responses';

const terms = { hz, crossoverHz: 80, highPass: [], lowPass: [] };

function centreAt(seats: number, arrivalDelaySeconds?: number): number {
  const random = seededRandom(7);
  const main = echoes(random, seats, 0.012);
  const sub = echoes(random, seats, 0.007);
  return delayCentre([{ seats: main }], sub, terms, arrivalDelaySeconds) ?? Number.NaN;
}

describe('delayCentre', () => {
  it('is drawn to the arrivals that were read, less the more seats there are', () => {
    // An arrival counts as two seats: two of three parts at one seat, two of eight at six.
    for (const [seats, part] of [
      [1, 2 / 3],
      [6, 2 / 8],
    ] as const) {
      const moved = centreAt(seats, 0.009) - centreAt(seats, 0.003);
      expectClose(moved, part * 0.006, 1e-9);
    }
  });

  it('goes by onsets alone where no arrival was read, and about where they line up', () => {
    for (const seats of [1, 6]) expect(Math.abs(centreAt(seats) - 0.005)).toBeLessThan(0.003);
  });
});
