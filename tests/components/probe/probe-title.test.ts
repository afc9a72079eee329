import { describe, expect, it } from 'vitest';
import { sayList } from '../../../src/proposal/phrases';
import { probeTitle } from '../../../components/probe/probe-title';
import type { ChannelReading } from '../../../src/reading/reading';
import type { BenchState } from '../../../src/session/bench';
import { FakeBench } from '../fake-bench';
import { emptyReading, inventedReadings, layout524 } from '../fixtures';
import { plain } from '../mount';
import { sampleDocument, sampleTake } from '../sample-session';

function titled(state: Partial<BenchState>): { title: string; lede: string } {
  const { title, lede } = probeTitle(new FakeBench('5.2.4', state).state);
  return { title: plain(title), lede: plain(lede) };
}

function withChanged(change: (reading: ChannelReading) => Partial<ChannelReading>) {
  const readings = inventedReadings(layout524);
  const channels = readings.channels.map((reading) => ({ ...reading, ...change(reading) }));
  return { readings: { ...readings, channels } };
}

describe('the title of Probe', () => {
  it('says that nothing is measured yet', () => {
    expect(titled({}).title).toBe('Nothing measured yet');
    expect(titled({}).lede).toContain('all 11 speakers');
  });

  it('says at which seat nothing is measured, once another seat is', () => {
    const document = { ...sampleDocument('5.2.4'), takes: [sampleTake('5.2.4')] };
    const position = { id: 'seat-2', name: 'Sofa', kind: 'seat' as const };
    expect(titled({ document: { ...document, position } }).title).toBe(
      'Nothing measured at Sofa yet',
    );
  });

  it('says of which layout nothing is measured, once another was', () => {
    const document = { ...sampleDocument('5.2.4'), takes: [sampleTake('5.1')] };
    expect(titled({ document }).title).toBe('Nothing measured of 5.2.4 yet');
  });

  it('says what sounds and how long it lasts', () => {
    const part = { number: 1, of: 1 };
    const play = { phase: 'playing', progress: 0.4, secondsLeft: 31.4, position: 0 } as const;
    expect(titled({ activity: { kind: 'playing', channel: 'SiL', part, play } })).toEqual({
      title: 'Sweeping SiL',
      lede: '32 s left.',
    });
    expect(titled({ activity: { kind: 'playing', channel: null, part, play } }).title).toBe(
      'Listening to the quiet room',
    );
  });

  it('says which of several takes it is, and that the next waits', () => {
    const play = { phase: 'playing', progress: 0.4, secondsLeft: 31.4, position: 0 } as const;
    const part = { number: 2, of: 3 };
    expect(titled({ activity: { kind: 'playing', channel: 'SiL', part, play } }).lede).toBe(
      '32 s left of take 2 of 3.',
    );
    const prompt = { title: 'Move 2 plugs', steps: [] };
    expect(titled({ activity: { kind: 'waiting', prompt } }).title).toBe(
      'The next take waits for you',
    );
  });

  it('counts the readings as they arrive', () => {
    const channels = inventedReadings(layout524).channels.slice(0, 7);
    const activity = { kind: 'reading', progress: 0.6, secondsLeft: null, channels } as const;
    expect(titled({ activity }).title).toBe('Reading the take: 7 of 11 speakers');
  });

  it('says the finding when all is well', () => {
    const { title, lede } = titled({ readings: inventedReadings(layout524) });
    expect(title).toBe('All 11 speakers are read');
    expect(lede).toMatch(/^\w+ is nearest at \d\.\d\d m, \w+ farthest at \d\.\d\d m\./);
  });

  it('counts those that no take has come to', () => {
    const readings = inventedReadings(layout524);
    const channels = readings.channels.filter(({ channel }) => !channel.startsWith('TpB'));
    const { title, lede } = titled({ readings: { ...readings, channels } });
    expect(title).toBe('9 of 11 speakers are read');
    expect(lede).toContain('TpBL and TpBR');
  });

  it('names the speakers that play inverted', () => {
    const state = withChanged(({ channel }) => (channel === 'FR' ? { polarity: 'inverted' } : {}));
    expect(titled(state).title).toBe('FR plays inverted');
    expect(titled(state).lede).toContain('Switch the amplifier off');
  });

  it('doubts the microphone rather than the wires when most speakers read inverted', () => {
    const { title, lede } = titled(withChanged(() => ({ polarity: 'inverted' })));
    expect(title).toBe('Most speakers read inverted');
    expect(lede).toContain('The microphone or its input');
    expect(lede).not.toContain('swap plus and minus');
  });

  it('names those that must be taken again before those that are inverted', () => {
    const faults = [{ kind: 'lost', sentence: 'Lost.' }] as const;
    const state = withChanged(({ channel }) => {
      if (channel === 'FR') return { polarity: 'inverted' };
      return channel === 'SiL' || channel === 'FC' ? { faults } : {};
    });
    expect(titled(state).title).toBe('FC and SiL must be taken again');
  });

  it('names the silent ones first, and suspects the microphone when all are', () => {
    const one = withChanged(({ channel }) => (channel === 'FC' ? emptyReading('FC') : {}));
    expect(titled(one).title).toBe('Nothing was heard from FC');
    const all = withChanged(({ channel }) => emptyReading(channel));
    expect(titled(all).title).toBe('Nothing was heard from any speaker');
    expect(titled(all).lede).toContain('microphone');
  });

  it('says that the readings are of another plan', () => {
    const readings = { ...inventedReadings(layout524), layout: '5.1' };
    expect(titled({ readings }).title).toBe('The last take was of 5.1');
  });

  it('joins names as people do', () => {
    expect([[], ['FL'], ['FL', 'FR'], ['FL', 'FR', 'FC']].map(sayList)).toEqual([
      '',
      'FL',
      'FL and FR',
      'FL, FR and FC',
    ]);
  });
});
