import { msg, str } from '@lit/localize';
import { fitPath } from '../../dsp/comparison/fit-path';
import type { ChannelLabel } from '../system/channel';
import type { Findings } from './findings';
import { makeLine } from './make-line';
import type { ProofLine } from './proof';
import type { ProofCase, ProvedChannel } from './proof-case';

/** Responses this much alike are of one speaker at one place; speakers of a pair differ by more. */
const alike = 0.8;

/** Whether a channel sounds, and sounds from the speaker it is named after. */
export function claimAnswers(
  proof: ProofCase,
  { mainFits, subFits }: Findings,
  one: ProvedChannel,
): ProofLine {
  const { label, name } = one.channel;
  const line = (rest: Parameters<typeof makeLine>[3]): ProofLine =>
    makeLine('answers', label, [label], rest);
  if (one.after?.faults.some(({ kind }) => kind === 'silent')) {
    return {
      ...line({ verdict: 'fail', sentence: msg(str`${sentenceName(name)} stays silent.`) }),
      slip: 'wrong wiring',
      changes: [wiring(label, 'nothing')],
    };
  }
  const fit = (one.channel.kind === 'sub' ? subFits : mainFits).get(label);
  if (!fit) {
    return line({
      verdict: 'cannot tell',
      sentence: msg(
        str`${sentenceName(name)} sounds, but its bass was not read before and after, so from where cannot be told.`,
      ),
      action: msg('Read it in Probe with its crossover at full range, then prove it again.'),
    });
  }
  if (fit.agreement >= alike) {
    return line({
      verdict: 'pass',
      sentence: msg(str`${sentenceName(name)} sounds from its speaker.`),
    });
  }
  const other = otherSource(proof, one);
  if (other) {
    return {
      ...line({
        verdict: 'fail',
        sentence: msg(str`${sentenceName(name)} sounds from ${other.name}.`),
      }),
      slip: 'wrong wiring',
      changes: [wiring(label, other.label)],
    };
  }
  return line({
    verdict: 'cannot tell',
    sentence: msg(str`${sentenceName(name)} sounds unlike before, and like no other speaker.`),
    action: msg('Put the microphone where it stood in Probe, or read this position again there.'),
  });
}

/** The other speaker that a main sounds like. */
function otherSource({ mains, hz }: ProofCase, one: ProvedChannel) {
  const { bassAfter } = one;
  if (!bassAfter || one.channel.kind === 'sub') return null;
  const found = mains.flatMap(({ channel, bassBefore }) => {
    if (channel === one.channel || !bassBefore) return [];
    const fit = fitPath(bassAfter, bassBefore, hz, [200, 480]);
    return fit && fit.agreement >= alike ? [{ channel, agreement: fit.agreement }] : [];
  });
  return found.sort((a, b) => b.agreement - a.agreement)[0]?.channel ?? null;
}

function wiring(label: ChannelLabel, from: string) {
  return {
    setting: 'wiring',
    channels: [label],
    group: null,
    from,
    to: label,
    unit: null,
  } as const;
}

/** The name with its first letter large. */
export function sentenceName(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}
