import type { Readings } from '../reading/reading';
import type { RolloffTogether } from '../reading/rolloff-together';
import type { Layout } from '../system/channel';
import type { Trouble } from '../trouble';
import { pairReadings, type ChannelMeasurement } from './channel-measurement';
import { checkProcessor } from './check-processor';
import { checkReadings } from './check-readings';
import { mostInverted } from './most-inverted';
import { startSentence } from './phrases';
import type { ChannelProposal, ProcessorSteps, Proposal } from './proposal';
import { proposeCrossover } from './propose-crossover';
import { distanceProposer } from './propose-distances';
import { levelProposer } from './propose-levels';
import { groupIds } from '../system/group-ids';

/** Subs have no crossover of their own. */
const groupOrder = groupIds.filter((group) => group !== 'subs');

/**
 * Numbers to type into the processor, each with its reason, out of one take's readings: crossover
 * per group, distance, trim and polarity per channel. The order of channels in the readings and the
 * layout changes nothing. Roll-offs read `together` stand in for those of this position. A trouble
 * when the readings belong to another layout, hold what is no number, or the processor's steps
 * cannot be used.
 */
export function proposeSettings(
  readings: Readings,
  layout: Layout,
  processor: ProcessorSteps,
  together: readonly RolloffTogether[] = [],
): Proposal | Trouble {
  const refused = checkProcessor(processor) ?? checkReadings(readings, layout);
  if (refused) return refused;
  const members = pairReadings(readings, layout, together);
  const hasSubs = members.some(({ channel }) => channel.kind === 'sub');
  return {
    format: 'leadline-proposal',
    version: 1,
    layout: layout.name,
    simulated: readings.simulated,
    groups: groupOrder.flatMap((group) => {
      const inGroup = members.filter(({ channel }) => channel.group === group);
      if (inGroup.length === 0) return [];
      return [proposeCrossover(group, inGroup, processor.crossoverHz, hasSubs)];
    }),
    channels: proposeChannels(members, readings, processor),
  };
}

function proposeChannels(
  members: readonly ChannelMeasurement[],
  readings: Readings,
  processor: ProcessorSteps,
): ChannelProposal[] {
  const proposeDistance = distanceProposer(members, readings, processor);
  const proposeLevel = levelProposer(members, readings.reference, processor);
  const likeMost = mostInverted(
    members.flatMap(({ channel, reading }) => (reading && channel.kind !== 'sub' ? [reading] : [])),
  );
  const subCount = members.filter(({ channel }) => channel.kind === 'sub').length;
  return members.map((member): ChannelProposal => {
    const { label, kind } = member.channel;
    const distance = proposeDistance(member);
    const level = proposeLevel(member);
    // Half a period of a sub and its polarity look alike, so a sub's is never called a fault.
    const polarity = kind === 'sub' ? 'cannot tell' : (member.reading?.polarity ?? 'cannot tell');
    return {
      channel: label,
      distanceMetres: distance.distanceMetres,
      distanceReason: distance.distanceReason,
      levelTrimDb: level.levelTrimDb,
      levelReason: level.levelReason,
      polarity,
      warnings: [
        ...level.warnings,
        ...(polarity === 'inverted' ? [sayInverted(member, likeMost)] : []),
        ...(kind === 'sub' ? warnSub(subCount) : []),
        ...(member.reading?.faults.map((fault) => fault.sentence) ?? []),
      ],
    };
  });
}

function sayInverted({ channel }: ChannelMeasurement, likeMost: boolean): string {
  if (likeMost) {
    return `${startSentence(channel.name)} reads inverted, as most speakers do: rather than all of them, the microphone or its input may turn the polarity over. Swap no wires before that is settled.`;
  }
  return `${startSentence(channel.name)} pushes where the others pull: with the amplifier off, swap its two wires at one end.`;
}

function warnSub(count: number): string[] {
  const lfe =
    'If it was reached through LFE, the processor played it 10 dB louder than bass of the mains.';
  if (count < 2) return [lfe];
  const least = (10 * Math.log10(count)).toFixed(0);
  const most = (20 * Math.log10(count)).toFixed(0);
  return [lfe, `${count} subs together come out ${least} to ${most} dB louder than each alone.`];
}
