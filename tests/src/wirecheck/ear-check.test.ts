import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../dsp/signal/random';
import type { ChannelLabel } from '../../../src/system/channel';
import { adviseRewiring } from '../../../src/wirecheck/advise-rewiring';
import { concludeEarCheck, forgetAnswers, type EarAnswer } from '../../../src/wirecheck/ear-check';

const channels: readonly ChannelLabel[] = ['FL', 'FR', 'FC', 'Sub 1', 'SiL', 'SiR'];
const here: EarAnswer = { kind: 'here' };
const at = (speaker: ChannelLabel): EarAnswer => ({ kind: 'elsewhere', speaker });
const allHere = Object.fromEntries(channels.map((channel) => [channel, here]));

/** Moves plugs as the advice for a round says: the plug that sat on each goes to the next. */
function moveRound(
  speakerOf: ReadonlyMap<ChannelLabel, ChannelLabel>,
  round: readonly ChannelLabel[],
): Map<ChannelLabel, ChannelLabel> {
  const moved = new Map(speakerOf);
  for (const [index, channel] of round.entries()) {
    const to = round[(index + 1) % round.length] ?? channel;
    moved.set(to, speakerOf.get(channel) ?? channel);
  }
  return moved;
}

describe('the ear check', () => {
  it('is proven when every channel was heard where it belongs', () => {
    expect(concludeEarCheck(channels, allHere)).toEqual({
      open: [],
      findings: [],
      proven: true,
      retest: [],
    });
  });

  it('plays the channels without an answer next, in wiring order', () => {
    expect(concludeEarCheck(channels, { FR: here, FL: here }).open).toEqual([
      'FC',
      'Sub 1',
      'SiL',
      'SiR',
    ]);
  });

  it('names an exchanged pair and plays only those two again', () => {
    const answers = { ...allHere, SiL: at('SiR'), SiR: at('SiL') };
    const { findings, retest, proven } = concludeEarCheck(channels, answers);
    expect(findings).toEqual([{ kind: 'exchanged', channels: ['SiL', 'SiR'] }]);
    expect(retest).toEqual(['SiL', 'SiR']);
    expect(proven).toBe(false);
    const again = forgetAnswers(answers, retest);
    expect(concludeEarCheck(channels, again).open).toEqual(['SiL', 'SiR']);
  });

  it('names two channels that sound from one speaker, and a silent one', () => {
    const answers = { ...allHere, FC: at('FL'), SiR: { kind: 'silent' } as const };
    expect(concludeEarCheck(channels, answers).findings).toEqual([
      { kind: 'elsewhere', channel: 'FC', from: 'FL' },
      { kind: 'shared speaker', speaker: 'FL', channels: ['FL', 'FC'] },
      { kind: 'silent', channel: 'SiR' },
    ]);
  });

  it('finds in every permutation the rounds whose moves put it right', () => {
    const random = seededRandom(11);
    for (let trial = 0; trial < 100; trial++) {
      const speakers = [...channels];
      for (let n = speakers.length - 1; n > 0; n--) {
        const swap = Math.floor((n + 1) * random());
        [speakers[n], speakers[swap]] = [speakers[swap] ?? 'FL', speakers[n] ?? 'FL'];
      }
      let wiring = new Map(channels.map((channel, n) => [channel, speakers[n] ?? channel]));
      const answers = Object.fromEntries(
        [...wiring].map(([channel, speaker]) => [
          channel,
          channel === speaker ? here : at(speaker),
        ]),
      );
      for (const finding of concludeEarCheck(channels, answers).findings) {
        if (finding.kind !== 'exchanged') throw new Error(`a permutation has no ${finding.kind}`);
        wiring = moveRound(wiring, finding.channels);
      }
      expect([...wiring].every(([channel, speaker]) => channel === speaker)).toBe(true);
    }
  });
});

describe('the advice for a finding', () => {
  it('names both plugs by their outputs, and to exchange them at one side only', () => {
    const { sentence, steps } = adviseRewiring(
      { kind: 'exchanged', channels: ['SiL', 'SiR'] },
      (channel) => (channel === 'SiL' ? 'Side left' : 'Side right'),
    );
    expect(sentence).toBe('Channels SiL and SiR are exchanged.');
    expect(steps[0]).toBe('Switch the amplifiers off.');
    expect(steps[1]).toContain('SiL (Side left) and SiR (Side right)');
    expect(steps[1]).toContain('not both');
  });

  it('says for a round which plug goes where', () => {
    const { steps } = adviseRewiring({ kind: 'exchanged', channels: ['FL', 'SiL', 'BL'] });
    expect(steps[1]).toContain(
      'the plug on FL to SiL; the plug on SiL to BL; the plug on BL to FL',
    );
  });

  it.each([
    { kind: 'elsewhere', channel: 'FC', from: 'FL' },
    { kind: 'silent', channel: 'FC' },
    { kind: 'doubled', channel: 'FC', from: ['FC', 'FL'] },
    { kind: 'shared speaker', speaker: 'FC', channels: ['FC', 'FL'] },
    { kind: 'mute speaker', speaker: 'FC' },
    { kind: 'inverted', speaker: 'FC' },
    { kind: 'cannot tell', channels: ['FC', 'FL'] },
  ] as const)('says what is wrong and what to do for: $kind', (finding) => {
    const { sentence, steps } = adviseRewiring(finding);
    expect(sentence).toMatch(/^[A-Z].*FC.*\.$/);
    expect(steps.length).toBeGreaterThan(0);
    for (const step of steps) expect(step).toMatch(/^[A-Z].*\.$/);
  });
});
