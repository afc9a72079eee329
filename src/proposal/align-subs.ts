import { alignSub, type AlignmentOptions, type SubAlignment } from '../../dsp/bass/align-sub';
import { throughPath } from '../../dsp/bass/electrical-path';
import type { ChannelLabel, GroupId } from '../system/channel';
import { crossoverFilters, type Abilities } from './abilities';
import type { BassField } from './bass-field';
import type { BassSettings } from './bass-settings';
import type { CombinedSubs } from './combine-subs';
import { playMain } from './play-bass';
import { subFilters } from './predict-group';
import type { MissingSetting } from './proposal';

/** A group of speakers the subs can be set against. */
export interface AlignableGroup {
  readonly group: GroupId;
  readonly channels: readonly ChannelLabel[];
  readonly crossoverHz: number;
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
  readonly chosen: { readonly delaySeconds: number; readonly inverted: boolean };
}

/**
 * Delay and polarity of all subs, set against each other already, against the fronts at all seats;
 * against the next group with a crossover where the fronts have none or were not captured. The
 * centre counts with the fronts where it shares their crossover. Where
 * the range of distances ends before the best delay, the best of those within 0.4 dB that fits.
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
  const options: AlignmentOptions = {
    hz,
    crossoverHz,
    highPass: [crossoverFilters(abilities, crossoverHz).highPass],
    lowPass: subFilters(crossoverHz, abilities, settings),
    ...(arrival === undefined
      ? {}
      : { wired: { delaySeconds: -arrival / speed, inverted: false } }),
    ...(field.marginDb === null ? {} : { noiseMarginDb: field.marginDb }),
  };
  const told = alignSub(mains, together, options);
  if (told.kind === 'cannot tell') return cannotTell[told.why];
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
  const chosen = [told, ...told.alternatives].find(fits) ?? told;
  return {
    kind: 'aligned',
    anchor: { group: first.group, channels: mains.map(({ channel }) => channel), crossoverHz },
    wishedMetres: metresOf(chosen.delaySeconds),
    inverted: field.subs.flatMap(({ channel }) =>
      (combined.settings.get(channel)?.inverted ?? false) !== chosen.inverted ? [channel] : [],
    ),
    told,
    chosen: { delaySeconds: chosen.delaySeconds, inverted: chosen.inverted },
  };
}

function spanOf(metres: readonly number[]): number {
  return metres.length === 0 ? 0 : Math.max(...metres) - Math.min(...metres);
}

const nothingHeard: MissingSetting = {
  channel: null,
  what: 'sub alignment',
  sentence:
    'The subs cannot be set against the mains: no group with a crossover has its bass and its distance in this take, so they go by arrival.',
  action: 'Take all speakers in one take with their crossovers at full range.',
};

const cannotTell: Readonly<Record<'noise' | 'no overlap', MissingSetting>> = {
  noise: {
    channel: null,
    what: 'sub alignment',
    sentence:
      'The subs cannot be set against the mains: about the crossover the noise is within 10 dB of them, so they go by arrival.',
    action: 'Measure louder, or with four sweeps averaged.',
  },
  'no overlap': {
    channel: null,
    what: 'sub alignment',
    sentence:
      'The subs cannot be set against the mains: about the crossover one side is more than 20 dB quieter, so no delay would change the sum, and they go by arrival.',
    action: 'Type the levels first, then measure again.',
  },
};
