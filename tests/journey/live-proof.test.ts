import { beforeAll, describe, expect, it } from 'vitest';
import type { PracticeSlip } from '../../src/rig/practice-slips';
import { withTypedHouse } from '../endurance/prove-house';
import { rightRow, slipRow, type SlipRow } from '../endurance/slip-runs';

/*
 * A house whose speakers are reached through a processor alone, as over one cable: read as the
 * processor comes, the proposed list typed as it is shown, proved; then once more with a mistake.
 */
const slip: PracticeSlip = { kind: 'inverted', channels: ['Sub 1'] };

let right: SlipRow;
let wrong: SlipRow;

beforeAll(async () => {
  const house = { layout: '3.1', seed: 2, readThrough: 'processor', sweepSeconds: 1 } as const;
  await withTypedHouse(house, async ({ prove }) => {
    right = rightRow('3.1', await prove([]));
    const planned = {
      name: 'sub inverted',
      slip,
      called: 'inverted',
      concerns: ['Sub 1'],
    } as const;
    wrong = slipRow('3.1', planned, await prove([slip]));
  });
}, 400_000);

describe('Settings typed into a processor in the closed loop', () => {
  it('pass in every line when they are typed as proposed', () => {
    expect(right.wrong).toEqual([]);
    expect(right.counts.pass).toBeGreaterThan(20);
  });

  it('fail with a sub that is turned over, and are told so', () => {
    expect(wrong.wrong).toEqual([]);
    expect(wrong.counts.fail).toBeGreaterThan(0);
  });
});
