import { msg, str } from '@lit/localize';
import {
  alignSub,
  scanAlignment,
  type AlignmentOptions,
  type SubAlignment,
} from '../../dsp/bass/align-sub';
import { distanceCostDb, lowestNear } from '../../dsp/bass/delay-candidates';
import { tolerance } from '../../dsp/bass/delay-interval';
import type { DelayAndPolarity, DelayScan } from '../../dsp/bass/delay-scan';
import { throughPath } from '../../dsp/bass/electrical-path';
import type { ChannelLabel, GroupId } from '../system/channel';
import { crossoverFilters, type Abilities } from './abilities';
import type { BassField } from './bass-field';
import type { BassSettings } from './bass-settings';
import type { CombinedSubs } from './combine-subs';
import { playMain } from './play-bass';
import { subFilters } from './predict-group';
import type { MissingSetting } from './proposal';
import { saySubAlignment } from './say-sub-alignment';

/** A delay may cost the speakers aligned with so much for the sake of the others, dB. */
const alikeDb = 0.4;

/** A group of speakers the subs can be set against. */
export interface AlignableGroup {
  readonly group: GroupId;
  readonly channels: readonly ChannelLabel[];
  readonly crossoverHz: number;
}

/** Another delay of all subs. */
export interface OtherAlignment extends DelayAndPolarity {
  /** Whether the processor's range of distances holds it. */
  readonly fits: boolean;
  /** Whether it lies farther from where the direct sounds line up, enough to count against it. */
  readonly farther: boolean;
}

/** Subs set against the mains, before anything is rounded. */
export interface AlignedSubs {
  readonly kind: 'aligned';
  readonly anchor: AlignableGroup;
  /** Without a common error; may lie below 0. */
  readonly wishedMetres: ReadonlyMap<ChannelLabel, number>;
  readonly inverted: readonly ChannelLabel[];
  readonly told: SubAlignment;
  /** Distance and polarity of the first sub that was chosen among told and its alternatives. */
  readonly chosen: DelayAndPolarity;
  /** All that was told, also what was chosen or lies next to it. */
  readonly others: readonly OtherAlignment[];
  /** Delays about the chosen one that cost all groups together at most 0.1 dB more. */
  readonly toleranceSeconds: readonly [number, number];
}

/**
 * Delay and polarity of all subs, set against each other already, against the fronts at all seats;
 * against the next group with a crossover where the fronts have none or were not captured. The
 * centre counts with the fronts where it shares their crossover. Where several delays
 * are within 0.4 dB of the best, the one that serves all groups best is taken, distance from where
 * the direct sounds line up counted against it, of those that the range of distances holds.
 */
export function alignSubs(
  field: BassField,
  combined: CombinedSubs,
  groups: readonly AlignableGroup[],
  abilities: Abilities,
  settings: BassSettings,
): AlignedSubs | MissingSetting {
  const { hz } = field;
  const heard = groups.flatMap((one) => {
    const mains = one.channels.flatMap((channel) => {
      const seats = playMain(field, channel, [], settings);
      return seats ? [{ channel, seats }] : [];
    });
    return mains.length > 0 ? [{ ...one, mains }] : [];
  });
  const [first] = heard;
  const [sub] = field.subs;
  if (!first || !sub) return nothingHeard;
  const centre = heard.find(({ group }) => group === 'centre');
  const joined =
    first.group === 'fronts' && centre?.crossoverHz === first.crossoverHz ? centre.mains : [];
  const mains = [...first.mains, ...joined];
  const { crossoverHz } = first;
  const gainDb = settings.trimDb[sub.channel] ?? 0;
  const together = throughPath(combined.together, { filters: [], gainDb }, hz);
  const speed = settings.metresPerSecond;
  const arrival = settings.distanceMetres[sub.channel];
  const arrivalDelaySeconds = -(arrival ?? 0) / speed;
  const options: AlignmentOptions = {
    hz,
    crossoverHz,
    highPass: [crossoverFilters(abilities, crossoverHz).highPass],
    lowPass: subFilters(crossoverHz, abilities, settings),
    ...(arrival === undefined
      ? {}
      : {
          wired: { delaySeconds: arrivalDelaySeconds, inverted: false },
          arrivalDelaySeconds,
        }),
    ...(field.marginDb === null ? {} : { noiseMarginDb: field.marginDb }),
  };
  const told = alignSub(mains, together, options);
  if (told.kind === 'cannot tell') {
    const sentence = msg(
      str`${saySubAlignment(msg('the subs'), crossoverHz, told)} They go by arrival.`,
    );
    const action =
      told.action === 'measure louder'
        ? msg('Measure louder.')
        : msg('Type the levels first, then measure again.');
    return { channel: null, what: 'sub alignment', sentence, action };
  }
  const scans = heard.map((one) => ({
    weight: weightOf(one.group) * one.mains.length,
    scan: scanAlignment(one.mains, together, {
      hz,
      crossoverHz: one.crossoverHz,
      highPass: [crossoverFilters(abilities, one.crossoverHz).highPass],
      lowPass: subFilters(one.crossoverHz, abilities, settings),
    }),
  }));
  const anchorScan = scanAlignment(mains, together, options);
  const anchorLoss = (at: DelayAndPolarity): number => anchorScan.lossDb(at);
  const metresOf = (delaySeconds: number): Map<ChannelLabel, number> =>
    new Map(
      field.subs.map(({ channel }) => {
        const own = combined.settings.get(channel)?.delaySeconds ?? 0;
        return [channel, -(delaySeconds + own) * speed];
      }),
    );
  const others = Object.entries(settings.distanceMetres).flatMap(([label, metres]) =>
    field.subs.some(({ channel }) => channel === label) ? [] : [metres],
  );
  const [low, high] = abilities.distanceRangeMetres;
  const most = high - low - abilities.distanceStepMetres;
  const fits = ({ delaySeconds }: { readonly delaySeconds: number }): boolean =>
    spanOf([...others, ...metresOf(delaySeconds).values()]) <= most;
  const [nearest, ...farther] = [told, ...told.alternatives]
    .flatMap((one): DelayAndPolarity[] => [
      one,
      // Up to an eighth of a period to where all groups together lose least.
      lowestNear(
        scanOfAll(scans, anchorScan),
        one.delaySeconds,
        1 / (8 * crossoverHz),
        one.inverted,
      ),
    ])
    .filter((one) => fits(one) && anchorLoss(one) <= told.lossDb + alikeDb);
  const costOf = ({ delaySeconds }: DelayAndPolarity): number =>
    distanceCostDb(delaySeconds, told.centreSeconds, 1 / crossoverHz);
  const chosen = bestForAll(
    [nearest ?? told, ...farther],
    (at) => lossOfAll(scans, at) + costOf(at),
  );
  return {
    kind: 'aligned',
    anchor: { group: first.group, channels: mains.map(({ channel }) => channel), crossoverHz },
    wishedMetres: metresOf(chosen.delaySeconds),
    inverted: field.subs.flatMap(({ channel }) =>
      (combined.settings.get(channel)?.inverted ?? false) !== chosen.inverted ? [channel] : [],
    ),
    told,
    chosen: { delaySeconds: chosen.delaySeconds, inverted: chosen.inverted },
    others: [told, ...told.alternatives].map((at) => ({
      delaySeconds: at.delaySeconds,
      inverted: at.inverted,
      fits: fits(at),
      farther: costOf(at) > costOf(chosen),
    })),
    toleranceSeconds: tolerance(
      scanOfAll(scans, anchorScan),
      { ...chosen, lossDb: lossOfAll(scans, chosen) },
      1 / crossoverHz,
    ),
  };
}

function spanOf(metres: readonly number[]): number {
  return metres.length === 0 ? 0 : Math.max(...metres) - Math.min(...metres);
}

const nothingHeard: MissingSetting = {
  channel: null,
  what: 'sub alignment',
  get sentence() {
    return msg(
      'The subs cannot be set against the mains: no group with a crossover has its bass and its distance in this take, so they go by arrival.',
    );
  },
  get action() {
    return msg('Take all speakers in one take with their crossovers at full range.');
  },
};

interface WeightedScan {
  readonly weight: number;
  readonly scan: DelayScan;
}

/** How much a speaker of a group counts beside one of the fronts (common practice, no source). */
function weightOf(group: GroupId): number {
  if (group === 'centre') return 2;
  if (group === 'fronts') return 1;
  return group.endsWith('heights') ? 0.25 : 0.5;
}

function lossOfAll(scans: readonly WeightedScan[], at: DelayAndPolarity): number {
  const total = scans.reduce((sum, { weight }) => sum + weight, 0);
  return scans.reduce((sum, { weight, scan }) => sum + (weight / total) * scan.lossDb(at), 0);
}

/** The loss of all groups in place of that of one. */
function scanOfAll(scans: readonly WeightedScan[], anchor: DelayScan): DelayScan {
  return { ...anchor, lossDb: (at) => lossOfAll(scans, at) };
}

function bestForAll<At>(candidates: readonly [At, ...At[]], lossDb: (at: At) => number): At {
  return candidates.reduce((best, one) => (lossDb(one) < lossDb(best) ? one : best));
}
