import { describe, expect, it } from 'vitest';
import type { PracticeSlip } from '../../../src/rig/practice-slips';
import { broken } from './told-proof';
import { proveRoom, type ProvedRoom } from './proved-room';

describe('a practice room with a processor', () => {
  let kept: Promise<ProvedRoom> | null = null;
  const theRoom = (): Promise<ProvedRoom> => (kept ??= proveRoom('3.1', 5));

  it('passes every line when its settings are typed right', async () => {
    expect(broken(await (await theRoom()).prove([]))).toEqual([]);
  });

  it.each<[string, PracticeSlip, string, string]>([
    ['a sub turned over', { kind: 'inverted', channels: ['Sub 1'] }, 'polarity Sub 1', 'inverted'],
    [
      'fronts left on full range',
      { kind: 'full range', group: 'fronts' },
      'redirected bass FL',
      'left on full range',
    ],
    [
      'a distance in feet',
      { kind: 'wrong unit', taken: 'feet', channels: ['FC'] },
      'arrival FC',
      'feet for metres',
    ],
    [
      "the sub's own low-pass",
      { kind: 'own low-pass', channels: ['Sub 1'], hz: 60, order: 4 },
      'response Sub 1',
      'own low-pass on',
    ],
  ])('fails and names %s', async (_what, slip, id, called) => {
    const { lines } = await (await theRoom()).prove([slip]);
    expect(lines.find((line) => line.id === id)).toMatchObject({ verdict: 'fail', slip: called });
  });
});
