import { describe, expect, it } from 'vitest';
import { routeOutputs } from '../../../../src/rig/live/route-outputs';
import type { ChannelLabel } from '../../../../src/system/channel';

const surround: ChannelLabel[] = ['FL', 'FR', 'FC', 'Sub 1', 'SiL', 'SiR'];

describe('routeOutputs', () => {
  it('puts a 5.1 with sides on the sides of eight outputs', () => {
    const route = routeOutputs(surround, 8);
    expect(route).toEqual(
      new Map([
        ['FL', 0],
        ['FR', 1],
        ['FC', 2],
        ['Sub 1', 3],
        ['SiL', 6],
        ['SiR', 7],
      ]),
    );
  });

  it('fills six outputs in order', () => {
    expect([...(routeOutputs(surround, 6) as Map<string, number>).values()]).toEqual([
      0, 1, 2, 3, 4, 5,
    ]);
  });

  it('puts speakers that a 7.1 output does not name on the first free outputs', () => {
    const route = routeOutputs(['FL', 'FR', 'FC', 'Sub 1', 'TpFL', 'TpFR'], 8);
    expect(route).toHaveProperty('size', 6);
    expect(route).toEqual(
      new Map([
        ['FL', 0],
        ['FR', 1],
        ['FC', 2],
        ['Sub 1', 3],
        ['TpFL', 4],
        ['TpFR', 5],
      ]),
    );
  });

  it('lets the given wiring win and moves whoever stood there', () => {
    const route = routeOutputs(['FL', 'FR'], 8, { FR: 0 });
    expect(route).toEqual(
      new Map([
        ['FR', 0],
        ['FL', 1],
      ]),
    );
  });

  it('says how many channels are short', () => {
    const route = routeOutputs(surround, 2);
    expect(route).toMatchObject({ trouble: 'no-output' });
    expect(route).toHaveProperty('sentence', expect.stringContaining('2 channels'));
    expect(route).toHaveProperty('sentence', expect.stringContaining('6 speakers'));
  });

  it('names a speaker wired to an output the device lacks', () => {
    expect(routeOutputs(['FL'], 2, { FL: 5 })).toMatchObject({
      trouble: 'no-output',
      sentence: expect.stringContaining('output 6') as string,
    });
  });

  it('refuses two speakers on one output', () => {
    expect(() => routeOutputs(['FL', 'FR'], 8, { FL: 1, FR: 1 })).toThrow(RangeError);
    expect(() => routeOutputs(['FL'], 8, { FL: 0.5 })).toThrow(RangeError);
  });
});
