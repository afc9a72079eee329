import type { CandidateSub, CrossoverCandidate } from '../../dsp/bass/crossover-candidates';
import { crossoverCandidates, type CrossoverCandidates } from '../../dsp/bass/crossover-candidates';
import { bassGrid, type SeatTransfers } from '../../dsp/bass/transfer';
import type { ChannelLabel, GroupId } from '../system/channel';
import { crossoverFilters, type Abilities } from './abilities';
import type { ChannelMeasurement } from './channel-measurement';
import type { CrossoverAlternative, PredictedLoss } from './proposal';
import { speakerLimits } from './speaker-limits';

/** Groups that a sub in front draws aside most where it is localised (common practice, no source). */
const aside: readonly GroupId[] = ['sides', 'backs'];
const asideDb = 2;

/** Everything the crossover of one group is judged by. */
export interface GroupCase {
  readonly group: GroupId;
  readonly members: readonly ChannelMeasurement[];
  readonly stepsHz: readonly number[];
  readonly abilities: Abilities;
  /** The subs together at all seats; null without subs, or where their bass was not captured. */
  readonly sub: CandidateSub | null;
  /** A speaker at the same seats with its delay and trim; null where it was not captured. */
  readonly atSeats: (channel: ChannelLabel) => SeatTransfers | null;
}

/** Every step of a group, judged; alternatives stand in the order of steps. */
export interface JudgedGroup extends CrossoverCandidates {
  readonly alternatives: readonly CrossoverAlternative[];
}

/** Judges every step the processor lets a group have; the first candidate is the best. */
export function judgeGroup(one: GroupCase): JudgedGroup {
  const { group, members, stepsHz, abilities, sub, atSeats } = one;
  const speakers = members.map((member) => ({
    ...speakerLimits(member),
    seats: atSeats(member.channel.label),
  }));
  const judged = crossoverCandidates(speakers, sub, {
    hz: bassGrid(),
    stepsHz,
    isBed: !group.endsWith('heights'),
    ...(aside.includes(group) ? { localisedDb: asideDb } : {}),
    filters: (hz) => {
      const { highPass, lowPass } = crossoverFilters(abilities, hz);
      return { highPass: [highPass], lowPass: [lowPass] };
    },
  });
  const f3Hz = speakers.flatMap((speaker) => speaker.f3Hz ?? []);
  const highestF3 = f3Hz.length === 0 ? null : Math.max(...f3Hz);
  const alternatives = judged.candidates
    .map(({ stepHz, practice, measured, breaks, localised, sum }): CrossoverAlternative => ({
      stepHz,
      marginHz: highestF3 === null ? null : stepHz - highestF3,
      practice,
      measured,
      breaks,
      localised,
      sum: sum && lossOf(sum, members),
    }))
    .sort((a, b) => a.stepHz - b.stepHz);
  return { ...judged, alternatives };
}

function lossOf(
  { lossDb, dip, worst }: NonNullable<CrossoverCandidate['sum']>,
  members: readonly ChannelMeasurement[],
): PredictedLoss | null {
  const channel = members.find((member) => member.channel.label === worst.name)?.channel.label;
  if (!channel) return null;
  return { lossDb, dipDb: dip.db, dipHz: dip.hz, worst: { channel, lossDb: worst.lossDb } };
}
