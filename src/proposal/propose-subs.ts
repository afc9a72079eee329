import { groupWord } from '../system/group-word';
import { msg, str } from '@lit/localize';
import type { ChannelLabel } from '../system/channel';
import type { AlignedSubs } from './align-subs';
import type { BassCase } from './bass-case';
import type { BassSettings } from './bass-settings';
import { sayList, sayLossDb } from './phrases';
import { predictGroup } from './predict-group';
import type { Crossovers } from './propose-groups';
import type { ProposalChoices } from './choices';
import { usefulPath } from './propose-distances';
import { groundsOf, type Reason } from './reason';
import { turnedOver } from './turned-over';
import type {
  OtherDelay,
  SubAlignmentProposal,
  SubFilterProposal,
  SubProposal,
  SubsProposal,
} from './subs-proposal';

export interface SubsCase {
  readonly one: BassCase;
  /** Null where the subs go by arrival. */
  readonly aligned: AlignedSubs | null;
  readonly crossovers: Crossovers;
  readonly lowPass: SubFilterProposal;
  readonly lowCut: SubFilterProposal;
  /** As typed, own choices included. */
  readonly typed: BassSettings;
  readonly choices: Pick<ProposalChoices, 'subsLaterSeconds' | 'subsTurned'>;
}

/** Everything the subs need, with what it does to the sums. Null without subs. */
export function proposeSubs(subs: SubsCase): SubsProposal | null {
  const { one, aligned, lowPass, lowCut } = subs;
  const members = one.members.filter(({ channel }) => channel.kind === 'sub');
  if (members.length === 0) return null;
  const gains = one.levels.subs.gainDb;
  const alignment = aligned && alignmentOf(subs, aligned);
  const combined = one.bass?.combined ?? null;
  return {
    subs: members.map((member): SubProposal => {
      const { label } = member.channel;
      return {
        channel: label,
        wishedMetres: aligned?.wishedMetres.get(label) ?? usefulPath(member),
        gainDb: gains.get(label) ?? 0,
        polarity: aligned?.inverted.includes(label) ? 'inverted' : 'normal',
      };
    }),
    alignment,
    spread: combined?.spread ?? null,
    bassPreferenceDb: one.levels.subs.preferenceDb,
    upperHz: combined?.upperHz ?? null,
    lowPass,
    lowCut,
    phase: phaseAdvice(aligned),
    reasons: [...(alignment ? sayAlignment(alignment) : []), ...saySpread(one)],
  };
}

function alignmentOf(
  { one, crossovers, typed, choices }: SubsCase,
  { anchor, told, chosen, others, toleranceSeconds }: AlignedSubs,
): SubAlignmentProposal | null {
  const { bass, abilities, bare, members } = one;
  if (!bass) return null;
  const predict = (channels: readonly ChannelLabel[], hz: number, settings: BassSettings) =>
    predictGroup(bass.field, channels, hz, abilities, settings);
  const sum = predict(anchor.channels, anchor.crossoverHz, typed);
  if (!sum) return null;
  const arrival = { ...typed, distanceMetres: bare.distanceMetres, inverted: bare.inverted };
  const groups = Object.entries(crossovers).flatMap(([name, hz]) => {
    const channels = members.filter(({ channel }) => channel.group === name);
    const [first] = channels;
    if (hz === null || !first || name === anchor.group) return [];
    const labels = channels.map(({ channel }) => channel.label);
    const found = predict(labels, hz, typed);
    return found ? [{ group: first.channel.group, sum: found }] : [];
  });
  const beside = (seconds: number): number => seconds - chosen.delaySeconds;
  const stepSeconds = abilities.distanceStepMetres / typed.metresPerSecond;
  const subs = bass.field.subs.map(({ channel }) => channel);
  const proposed = movedSubs(typed, subs, -choices.subsLaterSeconds, choices.subsTurned);
  const lossOf = (settings: BassSettings): number =>
    predict(anchor.channels, anchor.crossoverHz, settings)?.lossDb ?? sum.lossDb;
  const alternatives = others.flatMap(({ delaySeconds, inverted, fits, farther }): OtherDelay[] => {
    const laterSeconds = Math.round(beside(delaySeconds) / stepSeconds) * stepSeconds;
    const turned = inverted !== chosen.inverted;
    // Nearer than a quarter of a period it is the proposal itself.
    if (!turned && Math.abs(laterSeconds) < 1 / (4 * anchor.crossoverHz)) return [];
    const lossDb = lossOf(movedSubs(proposed, subs, laterSeconds, turned));
    return [{ laterSeconds, turned, lossDb, fits, farther }];
  });
  return {
    group: anchor.group,
    channels: anchor.channels,
    crossoverHz: anchor.crossoverHz,
    sum,
    byArrival: predict(anchor.channels, anchor.crossoverHz, arrival) ?? sum,
    asProposedLossDb: lossOf(proposed),
    alternatives: alternatives.toSorted((a, b) => a.lossDb - b.lossDb),
    toleranceSeconds: [beside(toleranceSeconds[0]), beside(toleranceSeconds[1])],
    interval: told.interval && [
      told.interval[0] - told.delaySeconds,
      told.interval[1] - told.delaySeconds,
    ],
    doubt: told.doubt === null ? null : doubts[told.doubt],
    groups,
  };
}

/** The settings with all subs later by so much, and turned over or not. */
function movedSubs(
  settings: BassSettings,
  subs: readonly ChannelLabel[],
  laterSeconds: number,
  turned: boolean,
): BassSettings {
  const distanceMetres = { ...settings.distanceMetres };
  for (const label of subs) {
    const metres = distanceMetres[label];
    if (metres !== undefined) {
      distanceMetres[label] = metres - laterSeconds * settings.metresPerSecond;
    }
  }
  const inverted = turned ? turnedOver(settings.inverted, subs) : settings.inverted;
  return { ...settings, distanceMetres, inverted };
}

const doubts = {
  get 'few seats'() {
    return msg(
      'Fewer than three seats were measured: another seat may want another delay. Takes at three seats would tell.',
    );
  },
  get 'another delay'() {
    return msg(
      'Without one of the seats another delay would be chosen. A take at one more seat would settle it.',
    );
  },
} as const;

/** A group that loses so much with the common setting is named, dB. */
const namedDb = 1.5;

function sayAlignment(found: SubAlignmentProposal): Reason[] {
  const { sum, byArrival, channels, groups } = found;
  const reasons: Reason[] = [
    {
      sentence: msg(
        str`With ${sayList(channels)} the subs lose ${sayLossDb(sum.lossDb)} as typed and ${sayLossDb(byArrival.lossDb)} by arrival alone, against both in phase; the deepest dip lies ${sayLossDb(-sum.dipDb)} below that.`,
      ),
      grounds: groundsOf(channels, 'bass'),
    },
  ];
  for (const other of groups.filter((one) => one.sum.lossDb > namedDb)) {
    reasons.push({
      sentence: msg(
        str`The ${groupWord(other.group)} lose ${sayLossDb(other.sum.lossDb)} with the same setting; one delay cannot suit all.`,
      ),
      grounds: groundsOf([other.sum.worst.channel], 'bass'),
    });
  }
  return reasons;
}

function saySpread({ bass }: BassCase): Reason[] {
  const spread = bass?.combined.spread;
  if (!bass || !spread) return [];
  const { deviationDb, asWiredDb, firstAloneDb } = spread;
  return [
    {
      sentence: msg(
        str`Set against each other the subs differ from seat to seat by ${sayLossDb(deviationDb)}, as wired by ${sayLossDb(asWiredDb)}, the first alone by ${sayLossDb(firstAloneDb)}.`,
      ),
      grounds: groundsOf(
        bass.field.subs.map(({ channel }) => channel),
        'bass',
      ),
    },
  ];
}

function phaseAdvice(aligned: AlignedSubs | null): Reason[] {
  const plain = (sentence: string): Reason => ({ sentence, grounds: [] });
  const turned = aligned?.inverted ?? [];
  return [
    ...(turned.length === 0
      ? []
      : [
          {
            sentence: msg(
              str`Turn ${sayList(turned)} over: in the processor where it can, else by the switch of the sub (180°). It does not mean that a wire is wrong.`,
            ),
            grounds: groundsOf(turned, 'bass'),
          },
        ]),
    plain(
      msg(
        "Leave a sub's own phase control at 0 and its own low-pass off or highest: the distance does the same in finer steps.",
      ),
    ),
  ];
}
