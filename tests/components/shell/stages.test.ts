import { describe, expect, it } from 'vitest';
import { stageFromHash, stageStandings } from '../../../components/shell/stages';
import type { Proof } from '../../../src/proof/proof';
import type { BenchState } from '../../../src/session/bench';
import { FakeBench, layoutOf } from '../fake-bench';
import { toldProof } from '../prove/proof-bench';
import { sampleReadings } from '../sample-readings';
import { sampleDocument, sampleTake } from '../sample-session';

function standings(
  state: Partial<BenchState>,
): Record<string, { done: boolean; missing: string | null }> {
  const all = stageStandings(new FakeBench('5.2.4', state).state);
  return Object.fromEntries(all.map(({ id, done, missing }) => [id, { done, missing }]));
}

const readings = sampleReadings(layoutOf('5.2.4'));

describe('the rail', () => {
  it('ticks nothing before anything is done', () => {
    expect(Object.values(standings({})).some((one) => one.done)).toBe(false);
  });

  it('says that nothing can be proposed before a take', () => {
    expect(standings({})['probe']?.missing).toContain('before a take is read');
  });

  it('ticks Plan and Probe once the layout in hand is read', () => {
    const document = { ...sampleDocument('5.2.4'), takes: [sampleTake('5.2.4')] };
    const channels = readings.channels.map((one) => ({ ...one, polarity: 'normal' as const }));
    const now = standings({ document, readings: { ...readings, channels } });
    expect(now['plan']?.done).toBe(true);
    expect(now['probe']).toEqual({ done: true, missing: null });
  });

  it('asks at the foot of Probe for the take again that its title asks for', () => {
    const withPolarity = (polarity: 'normal' | 'inverted') =>
      readings.channels.map((one) => ({ ...one, polarity }));
    const foot = (channels: typeof readings.channels) =>
      standings({ readings: { ...readings, channels } })['probe'];
    expect(standings({ readings })['probe']).toEqual({
      done: false,
      missing: 'Put the polarity of SiR right and run the take again.',
    });
    expect(foot(withPolarity('inverted'))?.missing).toContain('polarity of most speakers');
    expect(foot(withPolarity('normal').slice(1))?.missing).toBe('No take has come to FL yet.');
  });

  it('unticks Probe when the layout has changed since, and says which take is missing', () => {
    const now = standings({ readings: { ...readings, layout: '7.1.4' } });
    expect(now['probe']?.done).toBe(false);
    expect(now['probe']?.missing).toContain('7.1.4');
  });

  it('names the channels whose segments must be repeated', () => {
    const channels = readings.channels.map((one) =>
      one.channel === 'FC'
        ? { ...one, faults: [{ kind: 'clipped' as const, sentence: 'FC clipped.' }] }
        : one,
    );
    expect(standings({ readings: { ...readings, channels } })['probe']?.missing).toContain('FC');
  });

  it('says on Patch what the last take found wrong with the wiring', () => {
    expect(standings({ readings })['patch']?.missing).toContain('SiR is inverted');
  });

  it('never ticks what this version cannot check', () => {
    const now = standings({ readings });
    expect(now['patch']?.done).toBe(false);
    expect(now['prove']?.done).toBe(false);
  });
});

describe('Prove on the rail', () => {
  it('is ticked once all lines hold, and says what is open else', () => {
    const proved = (
      counts: Proof['counts'],
    ): { done: boolean; missing: string | null } | undefined =>
      standings({ proof: { ...toldProof({}), counts } })['prove'];
    expect(proved({ pass: 9, fail: 0, 'cannot tell': 0 })).toEqual({ done: true, missing: null });
    expect(proved({ pass: 8, fail: 1, 'cannot tell': 0 })?.missing).toContain('1 line fails');
    expect(proved({ pass: 7, fail: 0, 'cannot tell': 2 })?.missing).toContain('2 lines cannot');
  });
});

describe('the stage a hash names', () => {
  it('is that stage', () => {
    expect(stageFromHash('#propose')).toBe('propose');
  });

  it('is Plan for anything else', () => {
    expect(stageFromHash('')).toBe('plan');
    expect(stageFromHash('#attic')).toBe('plan');
  });
});
