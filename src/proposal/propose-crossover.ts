import { msg, str } from '@lit/localize';
import type { Decider } from '../../dsp/bass/crossover-rules';
import { firstStepFrom, measuredFactor } from '../../dsp/bass/crossover-rules';
import { heardInWords } from '../reading/rolloff-together';
import type { ChannelLabel } from '../system/channel';
import { sayMissing, type ChannelMeasurement } from './channel-measurement';
import { judgeGroup, type GroupCase, type JudgedGroup } from './group-case';
import { sayHz, sayList, sayLossDb, sayNumber, startSentence } from './phrases';
import type { CrossoverAlternative, GroupProposal } from './proposal';
import { groundsOf, sayReasons, type Reason } from './reason';
import { limitPercent } from './speaker-limits';

/** Common practice when nothing is known of a speaker. */
const unknownHz = 80;
const localisedHz = 120;
/** Less than this is no reason to name, dB. */
const leastSavedDb = 0.05;

/** A group's crossover without what the rest of the proposal decides. */
export type CrossoverProposal = Omit<GroupProposal, 'fullRange' | 'own'>;

/**
 * Where a group of speakers hands its bass to the subs, in steps of the processor, Hz. Practice: the
 * first step at or above the worst f3 + 10 Hz. Measured: the first at or above 1.25 × the worst 85 %
 * quantile of f6, and above what distortion lets it play. Proposed: of the steps that break nothing
 * the one whose sum with the subs loses least, each octave more counting a little against it
 * (crossoverCandidates).
 */
export function proposeCrossover(
  one: GroupCase,
  judged = one.stepsHz.length === 0 ? null : judgeGroup(one),
): CrossoverProposal {
  const { group, members } = one;
  const channels = members.map(({ channel }) => channel.label);
  const missing = members
    .filter(({ reading }) => !reading?.rolloff)
    .map((member) => sayMissing(member, 'roll-off'));
  const base = { group, channels };
  if (!judged) return { ...base, ...unsaid(noStepAtAll(), missing) };
  const { decidedBy, practiceHz, measuredHz } = judged;
  const rules = { practiceHz, measuredHz };
  if (!decidedBy) return { ...base, ...nothingKnown(one, practiceHz, missing) };
  const [best] = judged.candidates;
  const fits = best?.breaks.length === 0;
  const crossoverHz = fits ? best.stepHz : null;
  const reasons = reasonsOf(one, judged, decidedBy, crossoverHz);
  const decider = members.find(({ channel }) => channel.label === decidedBy.name);
  return {
    ...base,
    ...rules,
    crossoverHz,
    nearestHz: fits ? null : (best?.stepHz ?? null),
    decidedBy: decider?.channel.label ?? null,
    decidedByReading: decidedBy.by,
    ...readFrom(decider),
    reason: sayReasons(reasons),
    reasons,
    warnings: [
      ...(crossoverHz === null ? [] : warnLocalised(crossoverHz, members)),
      ...missing,
      ...new Set(members.flatMap(({ contradicted = [] }) => contradicted)),
      ...(decider?.reading?.faults.map(({ sentence }) => sentence) ?? []),
    ],
    alternatives: judged.alternatives,
  };
}

/** What a deciding roll-off was read from together. */
export function readFrom(
  decider: ChannelMeasurement | null | undefined,
): Pick<GroupProposal, 'readFrom'> {
  const order = decider?.together?.finding.rolloff ? decider.together.order : null;
  return order ? { readFrom: { channels: order.channels, heard: heardInWords(order) } } : {};
}

function reasonsOf(
  { members, stepsHz, sub }: GroupCase,
  { alternatives, practiceHz, measuredHz }: JudgedGroup,
  decidedBy: Decider,
  crossoverHz: number | null,
): Reason[] {
  const at = (hz: number | null): CrossoverAlternative | undefined =>
    alternatives.find(({ stepHz }) => stepHz === hz);
  const first = firstStepFrom(decidedBy.neededHz, stepsHz);
  const reach = sub?.upperHz ?? null;
  return [
    ...sayDecider(decidedBy, members),
    plain(sayFirstStep(decidedBy, first, stepsHz)),
    ...(reach !== null && first !== null && first > reach && crossoverHz === null
      ? [
          plain(
            msg(
              str`The subs together are 6 dB down at ${sayHz(reach)}, below that step: no step suits both.`,
            ),
          ),
        ]
      : []),
    ...sayHigher(at(first), at(crossoverHz)),
    ...saySum(at(crossoverHz), members),
    ...sayPractice(practiceHz, measuredHz, members),
  ];
}

function sayDecider({ name, by, neededHz }: Decider, members: readonly ChannelMeasurement[]) {
  const member = members.find(({ channel }) => channel.label === name);
  const rolloff = member?.reading?.rolloff ?? null;
  if (!member) return [];
  const { label, name: called } = member.channel;
  if (by !== 'roll-off') {
    const why =
      by === 'distortion'
        ? msg(str`passes ${limitPercent} % distortion`)
        : msg('loses more than 1 dB');
    return [
      {
        sentence: startSentence(
          msg(str`${called} ${why} below ${sayHz(neededHz)} at the level it was played.`),
        ),
        grounds: groundsOf([label], 'distortion'),
      },
    ];
  }
  if (!rolloff) return [];
  return [sayRolloff(member, members)];
}

/** A speaker's f6 with its interval, as a reason; with it those it was read together with. */
export function sayRolloff(
  decider: ChannelMeasurement,
  members: readonly ChannelMeasurement[],
): Reason {
  const known = members.filter(({ reading }) => reading?.rolloff);
  const { together, reading } = decider;
  const shared = known.filter(
    (one) => one === decider || (together !== null && one.together === together),
  );
  const names = sayList(shared.map(({ channel }) => channel.name));
  const verb = shared.length > 1 ? msg('are') : msg('is');
  const lead = known.length > shared.length ? msg(', the highest of the group') : '';
  const from = together?.finding.rolloff
    ? msg(str`, read from ${heardInWords(together.order)}`)
    : '';
  const f6 = reading?.rolloff?.f6Hz;
  const [low, high] = f6?.interval ?? [0, 0];
  return {
    sentence: startSentence(
      msg(
        str`${names} ${verb} 6 dB down at ${sayHz(f6?.median ?? 0)}${lead}${from} (90 % between ${sayHz(low)} and ${sayHz(high)}).`,
      ),
    ),
    grounds: groundsOf(
      shared.map(({ channel }) => channel.label),
      'rolloff',
    ),
  };
}

function sayFirstStep({ by, neededHz }: Decider, first: number | null, stepsHz: readonly number[]) {
  const need =
    by === 'roll-off'
      ? msg(
          str`The measured rule takes ${sayNumber(measuredFactor, 2)} times the 85 % quantile of that −6 dB point, ${sayHz(neededHz / measuredFactor)}: it calls for ${sayHz(neededHz)} or more`,
        )
      : msg(str`It calls for ${sayHz(neededHz)} or more`);
  return first === null
    ? msg(
        str`${need}, and the processor's highest step is ${sayHz(stepsHz.at(-1) ?? 0)}: no step will do.`,
      )
    : msg(str`${need}. The first step there is ${sayHz(first)}.`);
}

function sayHigher(
  first: CrossoverAlternative | undefined,
  chosen: CrossoverAlternative | undefined,
): Reason[] {
  if (!first?.sum || !chosen?.sum || chosen.stepHz === first.stepHz) return [];
  const saved = first.sum.lossDb - chosen.sum.lossDb;
  const higher = sayHz(chosen.stepHz);
  return [
    {
      sentence:
        saved >= leastSavedDb
          ? msg(
              str`${higher} is proposed all the same: the sum with the subs loses ${sayLossDb(saved)} less there.`,
            )
          : msg(
              str`${higher} is proposed all the same: the delay that serves it lets the direct sounds of speakers and subs arrive closer together.`,
            ),
      grounds: groundsOf([first.sum.worst.channel], 'bass'),
    },
  ];
}

function saySum(
  chosen: CrossoverAlternative | undefined,
  members: readonly ChannelMeasurement[],
): Reason[] {
  if (!chosen?.sum) return [];
  const { lossDb, dipDb, dipHz, worst } = chosen.sum;
  return [
    {
      sentence: msg(
        str`About ${sayHz(chosen.stepHz)} speakers and subs together lose ${sayLossDb(lossDb)} against both in phase, most at ${worst.channel} (${sayLossDb(worst.lossDb)}); the deepest dip lies ${sayLossDb(-dipDb)} below that at ${sayHz(dipHz)}.`,
      ),
      grounds: groundsOf(
        members.map(({ channel }) => channel.label),
        'bass',
      ),
    },
  ];
}

function sayPractice(
  practiceHz: number | null,
  measuredHz: number | null,
  members: readonly ChannelMeasurement[],
): Reason[] {
  const known = members.flatMap(({ channel, reading }) =>
    reading?.rolloff ? [{ channel, f3Hz: reading.rolloff.f3Hz.median }] : [],
  );
  const [first] = known;
  if (!first) return [];
  const worst = known.reduce((most, one) => (one.f3Hz > most.f3Hz ? one : most), first);
  const rule = msg(str`the highest −3 dB point (${sayHz(worst.f3Hz)}) plus 10 Hz`);
  const verb = practiceHz === measuredHz ? msg('agrees on') : msg('would say');
  return [
    {
      sentence:
        practiceHz === null
          ? msg(str`Common practice, ${rule}, finds no step.`)
          : msg(str`Common practice, ${rule}, ${verb} ${sayHz(practiceHz)}.`),
      grounds: groundsOf([worst.channel.label], 'rolloff'),
    },
  ];
}

type Answer = Omit<CrossoverProposal, 'group' | 'channels'>;

function nothingKnown(
  { members, stepsHz }: GroupCase,
  practiceHz: number | null,
  missing: readonly string[],
): Answer {
  const names = sayList(members.map(({ channel }) => channel.name));
  const start = msg(str`Nothing is known of the roll-off of ${names}.`);
  const sentence =
    practiceHz === null
      ? msg(
          str`${start} Common practice would be ${unknownHz} Hz, and the processor's highest step is ${sayHz(stepsHz.at(-1) ?? 0)}.`,
        )
      : msg(
          str`${start} ${sayHz(practiceHz)} is common practice when nothing is known, not a finding.`,
        );
  const labels: ChannelLabel[] = members.map(({ channel }) => channel.label);
  return {
    ...unsaid({ sentence, grounds: groundsOf(labels, 'rolloff') }, missing),
    crossoverHz: practiceHz,
    nearestHz: practiceHz === null ? (stepsHz.at(-1) ?? null) : null,
    practiceHz,
  };
}

const noStepAtAll = () => plain(msg('The processor offers this group no crossover step.'));

function unsaid(reason: Reason, missing: readonly string[]): Answer {
  return {
    crossoverHz: null,
    nearestHz: null,
    practiceHz: null,
    measuredHz: null,
    decidedBy: null,
    decidedByReading: null,
    reason: reason.sentence,
    reasons: [reason],
    warnings: missing,
    alternatives: [],
  };
}

function plain(sentence: string): Reason {
  return { sentence, grounds: [] };
}

function warnLocalised(crossoverHz: number, members: readonly ChannelMeasurement[]): string[] {
  if (crossoverHz <= localisedHz || !members.some(({ channel }) => channel.kind === 'bed'))
    return [];
  return [
    msg(
      str`Above ${localisedHz} Hz a sub begins to be heard where it stands; at ${sayHz(crossoverHz)} keep it near the front (common practice).`,
    ),
  ];
}
