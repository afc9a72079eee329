import { contradictSheet, contradictTogether } from '../reading/contradict-together';
import type { RolloffReading } from '../reading/reading';
import { heardInWords, type RolloffTogether } from '../reading/rolloff-together';
import type { Channel, ChannelLabel, GroupId } from '../system/channel';
import { sayMissing, type ChannelMeasurement } from './channel-measurement';
import { sayHz, sayList, startSentence } from './phrases';
import type { CrossoverAlternative, GroupProposal } from './proposal';

/** Common practice: the crossover lies 10 to 20 Hz above the roll-off; 80 Hz when nothing is known. */
const practiceMarginHz = 10;
const unknownHz = 80;
/** The measured rule: this many times the 80 % quantile of f6. */
const measuredFactor = 1.25;
/** Above this a sub begins to be heard where it stands (common practice, no source). */
const localisedHz = 120;

interface KnownSpeaker {
  readonly channel: Channel;
  readonly rolloff: RolloffReading;
  /** What it was read together from; null: from this position alone. */
  readonly together: RolloffTogether | null;
}

/**
 * Where a group of speakers hands its bass to the subs, in steps of the processor, Hz.
 * Practice: the first step at or above the worst f3 + 10 Hz. Measured, which is proposed: the first
 * step at or above 1.25 × the worst 80 % quantile of f6. A roll-off that was read together from all
 * seats stands in for the one of this position.
 */
export function proposeCrossover(
  group: GroupId,
  members: readonly ChannelMeasurement[],
  steps: readonly number[],
  hasSubs: boolean,
): GroupProposal {
  const known = members.flatMap((member) => knownSpeaker(member) ?? []);
  const unknown = members.filter((member) => !knownSpeaker(member));
  const missing = unknown.map((member) => sayMissing(member, 'roll-off'));
  const warnings = [...sayContradictions(members), ...missing];
  const base = { group, channels: members.map(({ channel }) => channel.label) };
  if (!hasSubs) return { ...base, ...fullRange(known), warnings };
  const decider = worst(known, (speaker) => speaker.rolloff.f6UpperHz);
  if (!decider) return { ...base, ...nothingKnown(members, steps), warnings };
  return { ...base, ...fromRolloff(known, decider, steps, warnings, members) };
}

function knownSpeaker({ channel, reading, together }: ChannelMeasurement): KnownSpeaker | null {
  const joint = together?.finding.rolloff;
  if (joint) return { channel, rolloff: joint, together };
  return reading?.rolloff ? { channel, rolloff: reading.rolloff, together: null } : null;
}

/** What cannot be of the roll-offs that were read together, each once. */
function sayContradictions(members: readonly ChannelMeasurement[]): string[] {
  const said = members.flatMap(({ reading, together }) => {
    if (!together) return [];
    const alone = reading && contradictTogether(reading, together);
    return [contradictSheet(together), alone].filter((one) => one !== null);
  });
  return [...new Set(said)];
}

type Answer = Omit<GroupProposal, 'group' | 'channels'>;

function fromRolloff(
  known: readonly KnownSpeaker[],
  decider: KnownSpeaker,
  steps: readonly number[],
  warnings: readonly string[],
  members: readonly ChannelMeasurement[],
): Answer {
  const neededHz = measuredFactor * decider.rolloff.f6UpperHz;
  const worstF3Hz = Math.max(...known.map(({ rolloff }) => rolloff.f3Hz.median));
  const measuredHz = firstStepFrom(neededHz, steps);
  const practiceHz = firstStepFrom(worstF3Hz + practiceMarginHz, steps);
  return {
    crossoverHz: measuredHz,
    practiceHz,
    measuredHz,
    decidedBy: decider.channel.label,
    ...readFrom(decider),
    reason: [
      sayRolloff(decider, known),
      measuredHz === null
        ? `It calls for ${sayHz(neededHz)} or more, and the processor's highest step is ${sayHz(highest(steps))}: no step will do.`
        : `The first step at or above ${sayHz(neededHz)} is ${sayHz(measuredHz)}.`,
      sayPractice(practiceHz, worstF3Hz, measuredHz),
    ].join(' '),
    warnings: [
      ...(measuredHz === null ? [] : warnLocalised(measuredHz, members)),
      ...warnings,
      ...known.flatMap(({ channel }) => faultsOf(channel.label, members)),
    ],
    alternatives: steps.map((stepHz): CrossoverAlternative => ({
      stepHz,
      marginHz: stepHz - decider.rolloff.f3Hz.median,
      practice: stepHz === practiceHz,
      measured: stepHz === measuredHz,
    })),
  };
}

function nothingKnown(members: readonly ChannelMeasurement[], steps: readonly number[]): Answer {
  const practiceHz = firstStepFrom(unknownHz, steps);
  const names = sayList(members.map(({ channel }) => channel.name));
  const start = `Nothing is known of the roll-off of ${names}.`;
  return {
    crossoverHz: practiceHz,
    practiceHz,
    measuredHz: null,
    decidedBy: null,
    reason:
      practiceHz === null
        ? `${start} Common practice would be 80 Hz, and the processor's highest step is ${sayHz(highest(steps))}.`
        : `${start} ${sayHz(practiceHz)} is common practice when nothing is known, not a finding.`,
    warnings: [],
    alternatives: [],
  };
}

function fullRange(known: readonly KnownSpeaker[]): Answer {
  const decider = worst(known, (speaker) => speaker.rolloff.f6Hz.median);
  const start = 'The layout has no sub to hand bass to, so this group runs full range.';
  return {
    crossoverHz: null,
    practiceHz: null,
    measuredHz: null,
    decidedBy: decider?.channel.label ?? null,
    ...(decider ? readFrom(decider) : {}),
    reason: decider ? `${start} ${sayRolloff(decider, known)} What lies below is lost.` : start,
    warnings: [],
    alternatives: [],
  };
}

function readFrom({ together }: KnownSpeaker): Pick<GroupProposal, 'readFrom'> {
  if (!together) return {};
  const { order } = together;
  return { readFrom: { channels: order.channels, heard: heardInWords(order) } };
}

function sayRolloff(decider: KnownSpeaker, known: readonly KnownSpeaker[]): string {
  const { rolloff, together } = decider;
  const { median, interval } = rolloff.f6Hz;
  const shared = known.filter(
    (one) => one === decider || (together !== null && one.together === together),
  );
  const names = sayList(shared.map(({ channel }) => channel.name));
  const verb = shared.length > 1 ? 'are' : 'is';
  const lead = known.length > shared.length ? ', the highest of the group' : '';
  const from = together ? `, read from ${heardInWords(together.order)}` : '';
  return startSentence(
    `${names} ${verb} 6 dB down at ${sayHz(median)}${lead}${from} (90 % between ${sayHz(interval[0])} and ${sayHz(interval[1])}).`,
  );
}

function sayPractice(
  practiceHz: number | null,
  worstF3Hz: number,
  measuredHz: number | null,
): string {
  const rule = `roll-off (${sayHz(worstF3Hz)}) plus 10 to 20 Hz`;
  if (practiceHz === null) return `Common practice, ${rule}, finds no step.`;
  const verb = practiceHz === measuredHz ? 'agrees on' : 'would say';
  return `Common practice, ${rule}, ${verb} ${sayHz(practiceHz)}.`;
}

function warnLocalised(crossoverHz: number, members: readonly ChannelMeasurement[]): string[] {
  if (crossoverHz <= localisedHz || !members.some(({ channel }) => channel.kind === 'bed'))
    return [];
  return [
    `Above ${localisedHz} Hz a sub begins to be heard where it stands; at ${sayHz(crossoverHz)} keep it near the front (common practice).`,
  ];
}

function faultsOf(label: ChannelLabel, members: readonly ChannelMeasurement[]): string[] {
  const member = members.find(({ channel }) => channel.label === label);
  return member?.reading?.faults.map((fault) => fault.sentence) ?? [];
}

/** The member with the largest value; the first of equals. */
function worst(
  known: readonly KnownSpeaker[],
  value: (speaker: KnownSpeaker) => number,
): KnownSpeaker | null {
  return known.reduce<KnownSpeaker | null>(
    (most, speaker) => (most === null || value(speaker) > value(most) ? speaker : most),
    null,
  );
}

function firstStepFrom(hz: number, steps: readonly number[]): number | null {
  return steps.find((step) => step >= hz - 1e-9) ?? null;
}

function highest(steps: readonly number[]): number {
  return steps.at(-1) ?? 0;
}
