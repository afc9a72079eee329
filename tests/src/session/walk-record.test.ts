import { describe, expect, it } from 'vitest';
import { joinSounds } from '../../../src/session/walk-record';
import type { ChannelLabel } from '../../../src/system/channel';
import type { WalkSound } from '../../../src/wirecheck/walk';

function sound(channel: ChannelLabel, arrivalSeconds: number | null, levelDb = -30): WalkSound {
  return { channel, levelDb, lowDb: null, arrivalSeconds, polarity: 'normal' };
}

describe('two rounds of plugs at one stop', () => {
  it('are put on one clock by the channel that sounds in both', () => {
    const first = [sound('FL', 0.31), sound('FR', 0.314)];
    // The second round was played 0.1 s later on its clock: FC really comes 2 ms after FL.
    const joined = joinSounds(first, [sound('FL', 0.41), sound('FC', 0.412)]);
    const at = (label: ChannelLabel) =>
      joined.find(({ channel }) => channel === label)?.arrivalSeconds ?? Number.NaN;
    expect(at('FC') - at('FL')).toBeCloseTo(0.002, 9);
    expect(at('FR') - at('FL')).toBeCloseTo(0.004, 9);
    expect(joined.map(({ channel }) => channel).sort()).toEqual(['FC', 'FL', 'FR']);
  });

  it('keep levels but no times where no channel was heard in both', () => {
    const joined = joinSounds(
      [sound('FL', null), sound('FR', 0.3)],
      [sound('FL', 0.4), sound('FC', 0.4, -20)],
    );
    expect(joined.find(({ channel }) => channel === 'FC')).toMatchObject({
      levelDb: -20,
      arrivalSeconds: null,
    });
    expect(joined.find(({ channel }) => channel === 'FR')?.arrivalSeconds).toBe(0.3);
  });

  it('are the newer one alone where it holds all channels', () => {
    const again = [sound('FL', 0.5)];
    expect(joinSounds([sound('FL', 0.31)], again)).toEqual(again);
  });
});
