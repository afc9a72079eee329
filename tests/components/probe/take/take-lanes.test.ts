import { describe, expect, it } from 'vitest';
import { lanesKey, lanesOf } from '../../../../components/probe/take/take-lanes';
import type { BenchState } from '../../../../src/session/bench';
import type { PlayProgress } from '../../../../src/rig/port';
import { FakeBench, layoutOf } from '../../fake-bench';
import { inventedReadings } from '../../fixtures';

function stages(state: Partial<BenchState>): string[] {
  return lanesOf(new FakeBench('3.1', state).state).map(
    ({ channel, stage }) => `${channel} ${stage}`,
  );
}

const play = (phase: PlayProgress['phase']): PlayProgress => ({
  phase,
  progress: 0.5,
  secondsLeft: 9,
  position: 0,
});

const part = { number: 1, of: 1 };

describe('what the lanes wait for', () => {
  it('is nothing before a take', () => {
    expect(stages({})).toEqual(['FL idle', 'FR idle', 'FC idle', 'Sub 1 idle']);
  });

  it('follows the sweeps in the order of the take', () => {
    const activity = { kind: 'playing', channel: 'FR', part, play: play('playing') } as const;
    expect(stages({ activity })).toEqual([
      'FL heard',
      'FR sweeping',
      'FC waiting',
      'Sub 1 waiting',
    ]);
  });

  it('is the start before the first sweep, and the reading after the last', () => {
    const starting = { kind: 'playing', channel: null, part, play: play('settling') } as const;
    expect(new Set(stages({ activity: starting }).map((one) => one.split(' ').at(-1)))).toEqual(
      new Set(['waiting']),
    );
    const finishing = { kind: 'playing', channel: 'Sub 1', part, play: play('finishing') } as const;
    expect(stages({ activity: finishing })).toEqual([
      'FL heard',
      'FR heard',
      'FC heard',
      'Sub 1 heard',
    ]);
  });

  it('fills with readings one by one', () => {
    const channels = inventedReadings(layoutOf('3.1')).channels.slice(0, 2);
    const activity = { kind: 'reading', progress: 0.5, secondsLeft: 1, channels } as const;
    expect(stages({ activity })).toEqual(['FL read', 'FR read', 'FC reading', 'Sub 1 heard']);
  });

  it('keeps earlier readings of the position in sight, marked, until they are replaced', () => {
    const readings = inventedReadings(layoutOf('3.1'));
    const channels = readings.channels.slice(0, 1);
    const activity = { kind: 'reading', progress: 0.5, secondsLeft: 1, channels } as const;
    const lanes = lanesOf(new FakeBench('3.1', { readings, activity }).state);
    expect(lanes.map(({ stage, earlier }) => `${stage} ${String(earlier)}`)).toEqual([
      'read false',
      'read true',
      'read true',
      'read true',
    ]);
  });

  it('is a sweep on the speaker that sounds, though it was read before', () => {
    const readings = inventedReadings(layoutOf('3.1'));
    const activity = { kind: 'playing', channel: 'FC', part, play: play('playing') } as const;
    expect(stages({ readings, activity })).toEqual([
      'FL read',
      'FR read',
      'FC sweeping',
      'Sub 1 read',
    ]);
  });

  it('waits between two takes with what the first one found', () => {
    const readings = inventedReadings(layoutOf('3.1'));
    const first = { ...readings, channels: readings.channels.slice(0, 2) };
    const activity = { kind: 'waiting', prompt: { title: 'Move', steps: [] } } as const;
    expect(stages({ readings: first, activity })).toEqual([
      'FL read',
      'FR read',
      'FC waiting',
      'Sub 1 waiting',
    ]);
  });

  it('depends on nothing that moves many times a second', () => {
    const bench = new FakeBench('3.1', {
      activity: { kind: 'playing', channel: 'FR', part, play: play('playing') },
    });
    const before = lanesKey(bench.state);
    bench.set({
      mic: { rmsDb: -20, peakDb: -10, clipped: false },
      activity: { kind: 'playing', channel: 'FR', part, play: { ...play('playing'), position: 9 } },
    });
    expect(lanesKey(bench.state)).toEqual(before);
  });

  it('leaves out readings of another plan', () => {
    const readings = { ...inventedReadings(layoutOf('3.1')), layout: '5.1' };
    expect(stages({ readings })[0]).toBe('FL idle');
  });
});
