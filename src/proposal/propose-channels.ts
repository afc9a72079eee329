import { numberText, withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import type { AlignedSubs } from './align-subs';
import type { BassCase } from './bass-case';
import { mostInverted } from './most-inverted';
import { sayList } from './phrases';
import type { ChannelProposal } from './proposal';
import { distanceProposer } from './propose-distances';
import type { Crossovers } from './propose-groups';
import { levelProposer } from './propose-levels';
import { sayInverted } from './say-inverted';

/** Distance, trim and polarity of every channel, in the fixed order of channels. */
export function proposeChannels(
  { members, readings, abilities, levels }: BassCase,
  aligned: AlignedSubs | null,
  crossovers: Crossovers,
): ChannelProposal[] {
  const proposeDistance = distanceProposer({
    members,
    readings,
    processor: abilities,
    aligned: aligned?.wishedMetres ?? new Map(),
    crossoverHzOf: ({ channel }) =>
      channel.kind === 'sub'
        ? (aligned?.anchor.crossoverHz ?? null)
        : (crossovers[channel.group] ?? null),
  });
  const proposeLevel = levelProposer(levels);
  const likeMost = mostInverted(
    members.flatMap(({ channel, reading }) => (reading && channel.kind !== 'sub' ? [reading] : [])),
  );
  const subNames = members.flatMap(({ channel }) => (channel.kind === 'sub' ? channel.name : []));
  const together = levels.subs.gainDb.size > 1;
  return members.map((member): ChannelProposal => {
    const { label, kind } = member.channel;
    const { warnings, ...level } = proposeLevel(member);
    // Half a period of a sub and its polarity look alike, so a sub's is never called a fault.
    const polarity = kind === 'sub' ? 'cannot tell' : (member.reading?.polarity ?? 'cannot tell');
    return {
      channel: label,
      ...proposeDistance(member),
      ...level,
      polarity,
      warnings: [
        ...warnings,
        ...(polarity === 'inverted' ? [sayInverted(member.channel.name, likeMost)] : []),
        ...(kind === 'sub' ? warnSubs(subNames, together) : []),
        ...(member.reading?.faults.map((fault) => fault.sentence) ?? []),
      ],
    };
  });
}

/** The same for every sub, so that it can be said once; `together`: their levels were added up. */
function warnSubs(names: readonly string[], together: boolean): string[] {
  const count = names.length;
  const louder = withUnit('10', 'dB');
  if (count === 1) {
    return [
      msg(
        str`If ${sayList(names)} was reached through LFE, the processor played it ${louder} louder than bass of the mains.`,
      ),
    ];
  }
  const lfe = msg(
    str`If ${sayList(names)} were reached through LFE, the processor played them ${louder} louder than bass of the mains.`,
  );
  if (together) return [lfe];
  const least = numberText(10 * Math.log10(count));
  const most = numberText(20 * Math.log10(count));
  return [
    lfe,
    msg(
      str`${count} subs together come out ${least} to ${withUnit(most, 'dB')} louder than each alone.`,
    ),
  ];
}
