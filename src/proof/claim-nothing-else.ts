import { msg, str } from '@lit/localize';
import type { ChannelLabel } from '../system/channel';
import { listInWords } from '../system/list-in-words';
import { channelName } from '../system/channel-names';
import { crossoverOf } from './expect-bass';
import { findStrangers, openSounds, type Stranger } from './find-strangers';
import { judgeInterval } from './judge-interval';
import { makeLine } from './make-line';
import type { ProofLine } from './proof';
import type { ProofCase } from './proof-case';

/** A speaker that plays along this far below or less is told, dB. */
const audibleDb = -20;

interface PlaysAlong extends Stranger {
  readonly with: ChannelLabel;
}

/** Whether any speaker plays along with another's channel; null with fewer than two mains. */
export function claimNothingElse(proof: ProofCase): ProofLine | null {
  const labels = proof.mains.map(({ channel }) => channel.label);
  if (labels.length < 2) return null;
  const strangers: PlaysAlong[] = [];
  let isSure = true;
  let looked = 0;
  const sounds = openSounds(proof);
  for (const main of proof.mains) {
    const found = findStrangers(proof, main, sounds);
    if (!found) continue;
    looked++;
    for (const one of found) {
      const { powerDb, half } = one;
      const interval = [powerDb - half, powerDb + half] as const;
      const verdict = judgeInterval({ interval, allowed: [-Infinity, audibleDb] });
      if (verdict === 'fail') strangers.push({ ...one, with: main.channel.label });
      else if (verdict === 'cannot tell' && powerDb > audibleDb) isSure = false;
    }
  }
  const line = (rest: Parameters<typeof makeLine>[3]): ProofLine =>
    makeLine('nothing else', 'all', labels, rest);
  const [loudest] = strangers.toSorted((a, b) => b.powerDb - a.powerDb);
  if (loudest) {
    const all = [...new Set(strangers.map(({ channel }) => channel))];
    const names = listInWords(all.map(channelName));
    return {
      ...line({
        verdict: 'fail',
        sentence: msg(
          str`Not only the channel's own speaker plays: ${names} ${all.length === 1 ? msg('plays') : msg('play')} along, most of all with ${channelName(loudest.with)}.`,
        ),
      }),
      slip: 'upmixing on',
      changes: [
        { setting: 'upmixing', channels: all, group: null, from: 'on', to: 'off', unit: null },
      ],
    };
  }
  if (!isSure || looked === 0) {
    return line({
      verdict: 'cannot tell',
      sentence: msg('Whether other speakers play along cannot be told.'),
      action: msg('Mend the other lines first, then prove all channels again.'),
    });
  }
  const subs = proof.mains.some((main) => crossoverOf(proof, main) !== null)
    ? msg(' and the subs')
    : '';
  return line({
    verdict: 'pass',
    sentence: msg(str`Nothing plays but each channel's own speaker${subs}.`),
  });
}
